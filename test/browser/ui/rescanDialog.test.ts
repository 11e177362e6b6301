import axe from 'axe-core'
import { afterEach, expect, it, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import type { ReconformPlan, ReconformRow } from '../../../src/core/conform/reconformPlan.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { cuesOf, reelOf } from '../../../src/store/queries.ts'
import { offerRescan, setRescanStage } from '../../../src/store/rescan.ts'
import { RescanDialog } from '../../../src/ui/import/RescanDialog.tsx'
import '../../../src/ui/styles/import.css'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const dialog = () => page.getByRole('dialog')

const button = (name: string) => dialog().getByRole('button', { name, exact: true })

const asked = (canFollow = true) => {
  const app = onScreen(RescanDialog)
  const choices = ['use', 'leave', 'follow', 'followList', 'stop', 'apply', 'saveReport']
  Object.assign(app.services.rescan, Object.fromEntries(choices.map((name) => [name, vi.fn()])))
  offerRescan(app.store, 'new.mov', 'It has other frames.', canFollow)
  return app
}

/** Cue 1 stays, 2 moves, 3 is doubtful, 4 is lost; one begins anew. */
const planned = (follows: ReconformPlan['follows'] = 'pictures') => {
  const app = asked()
  const state = app.store.getState()
  const [cues, reel] = [cuesOf(state), reelOf(state)]
  if (!reel) throw new Error('no reel')
  const rows = cues.map((cue, i): ReconformRow => {
    const outcome = (['follows', 'follows', 'doubtful', 'lost'] as const)[i] ?? 'lost'
    const first = outcome === 'lost' ? undefined : frame(cue.first - (i === 0 ? 0 : 30))
    const says = outcome === 'doubtful' ? 'It may also be at 10:00:20:00.' : ''
    const found = outcome === 'lost' ? 0 : 90
    return { number: i + 1, cue, outcome, first, sure: 0.9, frames: 100, found, says }
  })
  const boundary = { kind: 'cut', confidence: 1 } as const
  const plan: ReconformPlan = {
    follows,
    reel,
    frames: 900,
    rows,
    added: [{ first: frame(500), again: undefined, ramp: 0, boundary }],
    held: [],
    notTaken: [],
  }
  setRescanStage(app.store, { kind: 'found', plan })
  return app
}

const isClean = async () => {
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
  })
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
}

it('asks what is to be done with another scan; Escape leaves it', async () => {
  const app = asked()
  await expect.element(dialog()).toHaveTextContent('It has other frames.')
  await isClean()
  await button('Follow the pictures…').click()
  expect(app.services.rescan.follow).toHaveBeenCalledOnce()
  await button('Follow a list…').click()
  expect(app.services.rescan.followList).toHaveBeenCalledOnce()
  await button('Use it all the same').click()
  expect(app.services.rescan.use).toHaveBeenCalledOnce()
  await userEvent.keyboard('{Escape}')
  expect(app.services.rescan.leave).toHaveBeenCalledOnce()
})

it('without the old scan pictures cannot be followed, and it says what to do', async () => {
  asked(false)
  await expect.element(dialog()).toHaveTextContent('find that one first')
  await expect.element(button('Follow the pictures…')).not.toBeInTheDocument()
  await expect.element(button('Follow a list…')).toBeVisible()
})

it('while it looks it says how far it is, and can be stopped from the keyboard', async () => {
  const app = asked()
  const progress = { done: 450, total: 1000, framesPerSecond: 90, secondsLeft: 6.1 }
  setRescanStage(app.store, { kind: 'looking', at: 'Looking at new.mov:', progress })
  await expect
    .element(dialog().getByRole('status'))
    .toHaveTextContent('Looking at new.mov: 45 % · 90 frames/s · 7 s left')
  await expect.element(button('Stop')).toHaveFocus()
  await userEvent.keyboard('{Enter}')
  expect(app.services.rescan.stop).toHaveBeenCalledOnce()
})

it('tells of each cue where it is now and how sure that is, by a word and a shape', async () => {
  const app = planned()
  const row = (name: RegExp) => dialog().getByRole('row', { name })
  await expect.element(row(/^2 /u)).toHaveTextContent('→follows90 %')
  await expect.element(row(/^2 /u)).toHaveTextContent('30 frames earlier')
  await expect.element(row(/^3 /u)).toHaveTextContent('?doubtful')
  await expect.element(row(/^3 /u)).toHaveTextContent('It may also be at')
  await expect.element(row(/^4 /u)).toHaveTextContent('▲lost')
  await expect
    .element(dialog())
    .toHaveTextContent('2 cues follow, 1 is doubtful, 1 is lost. A lost cue leaves the reel')
  await isClean()
  await button('1 lost').click()
  await expect.element(row(/^2 /u)).not.toBeInTheDocument()
  await dialog().getByRole('tab', { name: 'New and dropped 1' }).click()
  await expect.element(dialog()).toHaveTextContent('10:00:20:00 a new picture')
  await button('Save the report').click()
  expect(app.services.rescan.saveReport).toHaveBeenCalledOnce()
  await button('Apply').click()
  expect(app.services.rescan.apply).toHaveBeenCalledOnce()
})

it('of a list it tells what is in the list, and of no pictures and no sureness', async () => {
  planned('list')
  const row = (name: RegExp) => dialog().getByRole('row', { name })
  await expect.element(row(/^2 /u)).toHaveTextContent('90 of 100 frames in the list')
  await expect.element(row(/^2 /u)).not.toHaveTextContent('%')
  await expect.element(dialog().getByRole('columnheader', { name: 'sure' })).not.toBeInTheDocument()
  await dialog().getByRole('tab', { name: 'New and dropped 1' }).click()
  await expect.element(dialog()).toHaveTextContent('10:00:20:00 from elsewhere')
  await expect.element(dialog()).not.toHaveTextContent('picture')
  await dialog().getByRole('tab', { name: 'Remarks 0' }).click()
  await expect.element(dialog()).toHaveTextContent('No remarks.')
})
