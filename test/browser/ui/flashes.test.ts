import { createElement } from 'react'
import { afterEach, expect, it, vi } from 'vitest'
import { page } from 'vitest/browser'
import { FLASH_CAUTION } from '../../../src/core/flashes/caution.ts'
import { cueFlashes } from '../../../src/core/flashes/cueFlashes.ts'
import type { FlashReport } from '../../../src/core/flashes/flashReport.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { checkKeyOf } from '../../../src/store/checkKey.ts'
import { cuesOf, currentCue } from '../../../src/store/queries.ts'
import { withVerdict } from '../../../src/store/verdictBook.ts'
import { FlashPanel } from '../../../src/ui/bench/FlashPanel.tsx'
import { FlashPlot } from '../../../src/ui/transfer/FlashPlot.tsx'
import { lightAfter, reportOf } from '../../core/flashes/flashClip.ts'
import { sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { verdictOf } from '../../support/sampleVerdict.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const SIZE = { width: 16, height: 9 }
const CHANGES = Array.from({ length: 14 }, (_, i) => 20 + 2 * i)

const flashingClip = (): FlashReport => reportOf(lightAfter(CHANGES), 100, SIZE)
const quietClip = (): FlashReport => reportOf(() => 0.4, 100, SIZE)

const showPlot = (report: FlashReport) => {
  const onGoTo = vi.fn()
  const reel = { rate: rate(25), startCount: 0, isDropFrame: false }
  const cues = Object.values(sampleJob([0, 30], (cue) => cue, sampleReel()).cues)
  onScreen(() => createElement(FlashPlot, { report, cues, reel, onGoTo }))
  return onGoTo
}

it('the plot of a report says what is past a limit, and goes to its frames', async () => {
  const onGoTo = showPlot(flashingClip())
  await expect.element(page.getByRole('img', { name: /limits are passed 1 times/u })).toBeVisible()
  const row = page.getByRole('row', { name: /flashes/u })
  await expect.element(row).toHaveTextContent('13 changes within a second')
  await page.getByRole('button', { name: '00:00:00:20' }).click()
  expect(onGoTo).toHaveBeenCalledWith(20)
  await page.getByRole('button', { name: '00:00:01:21' }).click()
  expect(onGoTo).toHaveBeenLastCalledWith(46)
})

it('a report of nothing says so, and no plot is without the caution', async () => {
  showPlot(quietClip())
  await expect.element(page.getByText('No limit is passed.')).toBeVisible()
  await expect.element(page.getByText(FLASH_CAUTION)).toBeVisible()
  await expect.element(page.getByRole('table')).not.toBeInTheDocument()
})

it('the bench warns of what flashes in the cue under the line, and is silent else', async () => {
  const app = onScreen(FlashPanel)
  const panel = page.getByRole('status', { name: 'Flashes of the cue' })
  await expect.element(panel).not.toBeInTheDocument()
  const state = app.store.getState()
  const cue = currentCue(state) ?? cuesOf(state)[0]
  if (!cue) throw new Error('The sample job has cues.')
  const key = checkKeyOf(state, cue) ?? ''
  const flashes = cueFlashes(flashingClip())
  app.store.setState({
    verdicts: withVerdict(state.verdicts, key, verdictOf(true), cue.first, flashes),
  })
  await expect.element(panel).toHaveTextContent('flashes')
  await expect.element(panel).toHaveTextContent(FLASH_CAUTION)
  await panel.getByRole('button').first().click()
  expect(app.services.seek).toHaveBeenCalledWith(frame(20))
})
