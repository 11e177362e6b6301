import axe from 'axe-core'
import { afterEach, expect, it, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { addPass } from '../../../src/core/job/commands/addPass.ts'
import { perform, undo } from '../../../src/store/document.ts'
import { jobOf, reelOf } from '../../../src/store/queries.ts'
import { setTransferring } from '../../../src/store/transferring.ts'
import { Transfer } from '../../../src/ui/transfer/Transfer.tsx'
import '../../../src/ui/styles/handover.css'
import '../../../src/ui/styles/transfer.css'
import { samplePass } from '../../support/samplePass.ts'
import { clearScreen, onScreen } from './onScreen.ts'

afterEach(clearScreen)

const shown = () => {
  const desk = {
    look: vi.fn(),
    start: vi.fn(),
    pause: vi.fn(),
    stop: vi.fn(),
    goOn: vi.fn(),
    discard: vi.fn(),
    takeChecksum: vi.fn(),
    unpause: vi.fn(),
  }
  const app = onScreen(Transfer)
  Object.assign(app.services.transfer, desk)
  return { app, desk }
}

const line = (name: string) => page.getByRole('listitem', { name, exact: true })
const make = () => page.getByRole('button', { name: 'Make the transfer' })

it('tells how everything stands before a pass, and what it waits for', async () => {
  shown()
  await expect.element(line('Looked at')).toHaveTextContent('4 cues never came under the line.')
  await expect.element(line('Agreement')).toHaveTextContent('This job asks for no agreement.')
  await expect.element(line('Tolerance')).toHaveTextContent('4 cues are not measured')
  await expect.element(line('Scan')).toHaveTextContent('no checksum of the scan')
  await expect.element(make()).toBeDisabled()
  const pass = page.getByRole('region', { name: 'The pass', exact: true })
  await expect
    .element(pass)
    .toHaveTextContent('waits for: Looked at, Tolerance, Scan, Room, Line-up.')
  const found = await axe.run(document.body, {
    rules: {
      ...{ 'color-contrast': { enabled: false }, region: { enabled: false } },
      // The test puts the page into a main of its own.
      ...{ 'landmark-main-is-top-level': { enabled: false } },
      ...{ 'landmark-no-duplicate-main': { enabled: false } },
    },
  })
  expect(found.violations.map(({ id }) => id)).toEqual([])
})

it('keeps a written reason for just what was found, as one undo step', async () => {
  const { app } = shown()
  await line('Line-up').getByRole('button', { name: 'write a reason…' }).click()
  await line('Line-up').getByLabelText('Why the pass is made').fill('  Lined up yesterday. ')
  await line('Line-up').getByRole('button', { name: 'Keep the reason' }).click()
  await expect.element(line('Line-up')).toHaveTextContent('passed with a reason')
  await expect.element(line('Line-up')).toHaveTextContent('“Lined up yesterday.”')
  expect(reelOf(app.store.getState())?.overrides).toMatchObject([
    { check: 'line-up', reason: 'Lined up yesterday.' },
  ])
  undo(app.store)
  await expect.element(line('Line-up')).not.toHaveTextContent('passed with a reason')
})

const look = (app: ReturnType<typeof shown>['app'], count: number) =>
  app.store.setState({
    looked: new Set(Object.keys(jobOf(app.store.getState())?.cues ?? {}).slice(0, count)) as never,
  })

const giveReason = async (name: string, reason: string) => {
  await line(name).getByRole('button', { name: 'write a reason…' }).click()
  await line(name).getByLabelText('Why the pass is made').fill(reason)
  await line(name).getByRole('button', { name: 'Keep the reason' }).click()
}

it('says where a reason was given for something else, or is not needed, and takes it back', async () => {
  const { app } = shown()
  look(app, 3)
  await expect.element(line('Looked at')).toHaveTextContent('1 cue never came under the line.')
  await giveReason('Looked at', 'Seen on another machine.')
  await expect.element(line('Looked at')).toHaveTextContent('passed with a reason')
  look(app, 2)
  await expect.element(line('Looked at')).toHaveTextContent('A reason was given for something else')
  look(app, 4)
  await expect.element(line('Looked at')).toHaveTextContent('A reason is kept that is not needed')
  await line('Looked at').getByRole('button', { name: 'take that reason back' }).click()
  await expect.element(line('Looked at')).not.toHaveTextContent('Seen on another machine.')
  expect(reelOf(app.store.getState())?.overrides).toEqual([])
})

it('leads to the next cue a check is about', async () => {
  const { app } = shown()
  look(app, 3)
  await line('Looked at').getByRole('button', { name: 'Go to the next not looked at' }).click()
  expect(app.store.getState().step).toBe('rehearse')
  expect(app.store.getState().selection).toEqual(
    Object.keys(jobOf(app.store.getState())?.cues ?? {}).slice(3),
  )
})

it('logs a line-up, asks for agreement, and sets how the reel is transferred', async () => {
  const { app } = shown()
  await page.getByLabelText('What was set and read').fill('Open gate at 95 %.')
  await page.getByRole('button', { name: 'Log the line-up' }).click()
  await expect.element(line('Line-up')).toHaveTextContent('A line-up is logged.')
  await page.getByText('every cue is to be agreed').click()
  await expect.element(line('Agreement')).toHaveTextContent('4 cues are not agreed.')
  await page.getByLabelText('Format').selectOptions('h264')
  await page.getByLabelText('Limiting').selectOptions('soft')
  const leader = page.getByLabelText('Leader, seconds')
  await leader.fill('8')
  await userEvent.keyboard('{Enter}')
  expect(reelOf(app.store.getState())?.transfer).toMatchObject({
    format: 'h264',
    limiting: 'soft',
    head: { bars: 0, slate: 0, leader: 8 },
  })
})

it('shows a pass under way, which can be paused and stopped, and frames that were held', async () => {
  const { app, desk } = shown()
  const progress = { done: 40, total: 100, framesPerSecond: 20, secondsLeft: 3 }
  const run = {
    name: 'orlop.mp4',
    phase: 'writing',
    progress,
    isPaused: false,
    doneBefore: 12,
    heldFrames: [7],
  } as const
  setTransferring(app.store, { run })
  const pass = page.getByRole('region', { name: 'The pass', exact: true })
  await expect.element(pass).toHaveTextContent('Writing 40 % · 20 frames/s · 3 s left')
  await expect.element(pass).toHaveTextContent('12 frames were there already')
  await expect
    .element(page.getByRole('progressbar', { name: 'Writing' }))
    .toHaveAttribute('value', '40')
  await page.getByRole('button', { name: 'Pause' }).click()
  expect(desk.pause).toHaveBeenCalledOnce()
  setTransferring(app.store, { run: { ...run, isPaused: true } })
  await expect.element(pass).toHaveTextContent('Paused at 40 of 100')
  await page.getByRole('button', { name: 'Stop' }).click()
  expect(desk.stop).toHaveBeenCalledOnce()
  await page.getByRole('button', { name: /:07$/u }).click()
  expect(app.store.getState().step).toBe('rehearse')
})

it('offers to go on with a pass that was not finished, and asks before it is thrown away', async () => {
  const { app, desk } = shown()
  const unfinished = {
    name: 'orlop.mp4',
    begunAt: '2026-11-26T10:00:00Z',
    done: 30,
    total: 90,
    hindrance: undefined,
  }
  setTransferring(app.store, { unfinished })
  const pass = page.getByRole('region', { name: 'The pass', exact: true })
  await expect.element(pass).toHaveTextContent('30 of 90 frames')
  await page.getByRole('button', { name: 'Throw it away…' }).click()
  expect(desk.discard).not.toHaveBeenCalled()
  await page.getByRole('button', { name: 'Throw it away', exact: true }).click()
  expect(desk.discard).toHaveBeenCalledOnce()
  setTransferring(app.store, {
    unfinished: { ...unfinished, hindrance: 'The job has changed since.' },
  })
  await expect.element(pass).toHaveTextContent('The job has changed since.')
  await expect.element(page.getByRole('button', { name: 'Go on with it' })).toBeDisabled()
})

it('lists the passes of the reel with what was found in them', async () => {
  const { app } = shown()
  perform(app.store, (job) => addPass(job, samplePass()))
  const passes = page.getByRole('region', { name: 'Passes made' })
  await expect.element(passes).toHaveTextContent('something is wrong')
  await expect.element(passes).toHaveTextContent('3 of 500 frames are outside.')
  await expect.element(passes).toHaveTextContent('It was lined up for the reel before.')
  await expect.element(passes).toHaveTextContent('A frame that could not be decoded shows the one')
  await page.getByRole('button', { name: /:17$/u }).click()
  expect(app.store.getState().step).toBe('rehearse')
})

it('copies the checksum of what was written, or shows it where it cannot', async () => {
  const { app } = shown()
  const { sha256 } = samplePass().output
  perform(app.store, (job) => addPass(job, samplePass()))
  const passes = page.getByRole('region', { name: 'Passes made' })
  const write = vi.spyOn(navigator.clipboard, 'writeText').mockResolvedValueOnce(undefined)
  await page.getByRole('button', { name: 'copy all of it' }).click()
  await expect.element(passes).toHaveTextContent('The checksum is copied.')
  expect(write).toHaveBeenCalledWith(sha256)
  write.mockRejectedValueOnce(new Error('no'))
  await page.getByRole('button', { name: 'copy all of it' }).click()
  await expect.element(passes).toHaveTextContent(`here it is whole:${sha256}`)
})

it('says what a pass came to: right, wrong, or not known, and never right for not known', async () => {
  const { app } = shown()
  const finding = (standing: 'right' | 'wrong' | 'not known') =>
    ({ check: 'cues', standing, says: 'As was found.' }) as const
  const outcome = (standing: 'right' | 'wrong' | 'not known') =>
    setTransferring(app.store, {
      outcome: { name: 'orlop.mp4', standing, findings: [finding(standing)] },
    })
  const pass = page.getByRole('region', { name: 'The pass', exact: true })
  outcome('right')
  await expect.element(pass).toHaveTextContent('orlop.mp4 is made, read back, and found right.')
  outcome('wrong')
  await expect.element(pass).toHaveTextContent('▲ orlop.mp4 is made. Found wrong: Cues.')
  outcome('not known')
  await expect.element(pass).toHaveTextContent('◌ orlop.mp4 is made. Not known: Cues.')
  await expect.element(pass).not.toHaveTextContent('found right')
})

it('tells of a pass that was made from other values than the job has now', async () => {
  const { app } = shown()
  perform(app.store, (job) => addPass(job, samplePass()))
  const passes = page.getByRole('region', { name: 'Passes made' })
  setTransferring(app.store, { decidedNow: samplePass().decided })
  await expect.element(passes).not.toHaveTextContent('other values')
  setTransferring(app.store, { decidedNow: 'c'.repeat(64) })
  await expect.element(passes).toHaveTextContent('other values or settings than the job has now')
})
