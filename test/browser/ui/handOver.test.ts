import axe from 'axe-core'
import { afterEach, expect, it, vi } from 'vitest'
import { page } from 'vitest/browser'
import { FORMATS_HANDED_OVER, prepareFormat } from '../../../src/core/formats/prepareFormat.ts'
import { setNote } from '../../../src/core/job/commands/setNote.ts'
import type { Job } from '../../../src/core/job/job.ts'
import { perform, showJob } from '../../../src/store/document.ts'
import { jobOf } from '../../../src/store/queries.ts'
import { movePlayhead } from '../../../src/store/session.ts'
import type { App } from '../../../src/ui/appContext.ts'
import { HandOver } from '../../../src/ui/handover/HandOver.tsx'
import type { HandOverDesk } from '../../../src/ui/services.ts'
import '../../../src/ui/styles/handover.css'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

/** The page over a job, its files prepared as the worker does, and what was asked of the desk. */
const shown = (job: Job) => {
  let app: App | undefined
  const prepare = vi.fn<HandOverDesk['prepare']>(async (onPart) => {
    const now = app && jobOf(app.store.getState())
    if (now) for (const format of FORMATS_HANDED_OVER) onPart(prepareFormat(now, REEL_ID, format))
  })
  const desk = {
    prepare,
    saveFile: vi.fn<HandOverDesk['saveFile']>(async () => undefined),
    saveFormat: vi.fn<HandOverDesk['saveFormat']>(async () => undefined),
    saveStatement: vi.fn<HandOverDesk['saveStatement']>(async () => undefined),
    saveWhole: vi.fn<HandOverDesk['saveWhole']>(async () => undefined),
  }
  app = onScreen(HandOver)
  Object.assign(app.services.handOver, desk)
  showJob(app.store, job, 'other')
  return { app, ...desk }
}

const card = (name: string) => page.getByRole('region', { name, exact: true })

const ramped = (): Job => sampleJob(undefined, (cue, i) => ({ ...cue, ramp: i === 2 ? 5 : 0 }))

it('tells of every format what it carries, in words and shapes, cue by cue', async () => {
  const { saveFile, saveFormat } = shown(ramped())
  const row = page.getByRole('row', { name: /^Ramps/u })
  await expect.element(row).toHaveTextContent('● carried')
  await expect.element(row).toHaveTextContent('○ left out 1 cue')
  const edl = card('Edit decision list')
  await expect.element(edl).toHaveTextContent(/Ramps.*cue 3/u)
  await edl.getByRole('button', { name: 'Save Orlop-reel-1.edl' }).click()
  expect(saveFile).toHaveBeenCalledExactlyOnceWith('edl', 'Orlop-reel-1.edl')
  await page.getByRole('button', { name: 'Save 4 .cc files in one .zip' }).click()
  expect(saveFormat).toHaveBeenCalledExactlyOnceWith('cc')
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
  })
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
})

it('is worked out once for each state of the job, and not for what else changes', async () => {
  const { app, prepare } = shown(ramped())
  await expect.element(card('Edit decision list')).toHaveTextContent('Ramps')
  const before = prepare.mock.calls.length
  app.store.setState({ playback: { ...app.store.getState().playback, late: 3 } })
  movePlayhead(app.store, 20)
  await expect.element(card('How the reel stands')).toHaveTextContent('4 cues')
  expect(prepare).toHaveBeenCalledTimes(before)
  perform(app.store, (job) => setNote(job, cueId(1), 'Häfen'))
  await vi.waitFor(() => expect(prepare).toHaveBeenCalledTimes(before + 1))
  await expect.element(card('Edit decision list')).toHaveTextContent('Notes')
})

it('a cue that loses something is gone to', async () => {
  const { app } = shown(ramped())
  await card('Edit decision list').getByRole('button', { name: 'Go to cue 3' }).click()
  expect(app.store.getState().step).toBe('rehearse')
  expect(app.store.getState().selection).toEqual([cueId(3)])
  expect(app.services.seek).toHaveBeenCalledExactlyOnceWith(255)
})

it('everything is saved at once, and it says what is being written', async () => {
  const { saveWhole } = shown(ramped())
  let finish = () => {}
  saveWhole.mockImplementation(async (onFormat) => {
    onFormat('otio')
    await new Promise<void>((resolve) => {
      finish = resolve
    })
  })
  const whole = card('The whole hand-over')
  const save = whole.getByRole('button', { name: 'Save the whole hand-over' })
  await save.click()
  await expect.element(whole.getByRole('status')).toHaveTextContent('Writing: OpenTimelineIO…')
  await expect.element(save).toBeDisabled()
  finish()
  await expect.element(whole.getByRole('status')).toBeEmptyDOMElement()
  await expect.element(save).toBeEnabled()
})

it('of ten thousand cues each is told, few at a time', async () => {
  const firsts = Array.from({ length: 10_000 }, (_, i) => i * 2)
  const reel = sampleReel({ frames: 20_000 })
  shown(sampleJob(firsts, (cue, i) => ({ ...cue, ramp: i % 2 }), reel))
  const edl = card('Edit decision list')
  await expect.element(edl).toHaveTextContent('Ramps')
  const cues = edl.getByRole('group', { name: 'Ramps: cues' })
  await expect.element(cues.getByRole('button', { name: '4976 more…' })).toBeVisible()
  expect(document.querySelectorAll('button').length).toBeLessThan(400)
  await cues.getByRole('button', { name: '4976 more…' }).click()
  await expect.element(cues.getByRole('button', { name: '4736 more…' })).toBeVisible()
  await expect.element(edl).toHaveTextContent(/Save Orlop|Save 11 \.edl files/u)
})

it('in a small window the page is no wider than that', async () => {
  const { innerWidth, innerHeight } = window
  await page.viewport(720, 450)
  try {
    shown(ramped())
    await expect.element(page.getByRole('row', { name: /^Ramps/u })).toBeInTheDocument()
    await expect.element(card('Edit decision list')).toHaveTextContent('Ramps')
    expect(document.querySelectorAll('.format-table .unseen').length).toBeGreaterThan(1)
    expect(document.documentElement.scrollWidth).toBe(720)
  } finally {
    await page.viewport(innerWidth, innerHeight)
  }
})
