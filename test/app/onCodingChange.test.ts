import { expect, it } from 'vitest'
import { createFrameDesk } from '../../src/app/frameDesk.ts'
import { createStillDesk } from '../../src/app/stillDesk.ts'
import type { Workers } from '../../src/app/workers.ts'
import { PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { setReel } from '../../src/core/job/commands/setReel.ts'
import type { Reel } from '../../src/core/job/job.ts'
import type { Coding, Planes } from '../../src/core/picture/planes.ts'
import { frame } from '../../src/core/time/frame.ts'
import { type AppStore, createAppStore } from '../../src/store/appStore.ts'
import { checkKeyOf } from '../../src/store/checkKey.ts'
import { perform, showJob, undo } from '../../src/store/document.ts'
import { currentCue } from '../../src/store/queries.ts'
import type { StillRequest } from '../../src/work/reelCalls.ts'
import { MADE_LISTS } from '../support/madeLists.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'

const planes: Planes = {
  width: 1,
  height: 1,
  layout: '444',
  depth: 8,
  samples: [Uint8Array.of(1), Uint8Array.of(2), Uint8Array.of(3)],
}

/** A store with a job and its scan, and workers that note how they were asked for stills. */
const opened = (): { store: AppStore; workers: Workers; asked: Coding[] } => {
  const store = createAppStore()
  showJob(store, sampleJob(), 'key')
  store.setState({ media: 'ready' })
  const asked: Coding[] = []
  const workers = {
    screen: async () => planes,
    stills: async (_: 'still', { coding, width, height }: StillRequest) => {
      asked.push(coding)
      return { width, height, rgb: new Uint16Array(width * height * 3) }
    },
  } as unknown as Workers
  return { store, workers, asked }
}

const edit = (store: AppStore, change: (reel: Reel) => Reel): boolean =>
  perform(store, (job) => setReel(job, REEL_ID, change))

const list = MADE_LISTS['a matrix'] ?? null

const CHANGES: readonly (readonly [string, (reel: Reel) => Reel])[] = [
  ['base', (reel) => ({ ...reel, base: { ...PRINT_BASE, scan: 'negative' } })],
  ['list of the base', (reel) => ({ ...reel, base: { ...PRINT_BASE, list } })],
  ['matrix', (reel) => ({ ...reel, media: { ...reel.media, matrix: 'bt601' } })],
  ['range', (reel) => ({ ...reel, media: { ...reel.media, range: 'full' } })],
]

it.each(CHANGES)('another %s makes picture, stills and verdicts anew', async (_, change) => {
  const { store, workers, asked } = opened()
  const desk = createFrameDesk(store, workers, () => {})
  const stills = createStillDesk(store, workers)
  stills.subscribe(() => stills.request(frame(3)))
  desk.show({ frame: frame(3), planes })
  stills.request(frame(3))
  await expect.poll(() => stills.get(frame(3))).toBeDefined()
  const before = desk.frames.current()
  const cue = currentCue(store.getState())
  const key = cue && checkKeyOf(store.getState(), cue)

  expect(edit(store, change)).toBe(true)
  const after = desk.frames.current()
  expect(after).not.toBe(before)
  expect(after?.planes).toBe(planes)
  expect(after?.coding).not.toEqual(before?.coding)
  await expect.poll(() => asked).toEqual([before?.coding, after?.coding])
  await expect.poll(() => stills.get(frame(3))).toBeDefined()
  expect(cue && checkKeyOf(store.getState(), cue)).not.toBe(key)

  undo(store)
  expect(desk.frames.current()?.coding).toEqual(before?.coding)
  expect(cue && checkKeyOf(store.getState(), cue)).toBe(key)
})

it('another list of the base has another verdict, and one that comes back its own again', () => {
  const { store } = opened()
  const lists = ['a matrix', 'a curve of 4,096 places', 'a matrix'].map((name) => MADE_LISTS[name])
  const keys = lists.map((each) => {
    edit(store, (reel) => ({ ...reel, base: { ...PRINT_BASE, list: each ?? null } }))
    const cue = currentCue(store.getState())
    return cue && checkKeyOf(store.getState(), cue)
  })
  expect(keys[0]).not.toBe(keys[1])
  expect(keys[2]).toBe(keys[0])
  expect(keys[1]?.length).toBeLessThan(1000)
})

it('another name of the reel makes nothing anew, and the same reel no undo step', async () => {
  const { store, workers, asked } = opened()
  const desk = createFrameDesk(store, workers, () => {})
  const stills = createStillDesk(store, workers)
  desk.show({ frame: frame(3), planes })
  stills.request(frame(3))
  await expect.poll(() => stills.get(frame(3))).toBeDefined()
  const before = desk.frames.current()
  edit(store, (reel) => ({ ...reel, name: 'Orlop reel 2' }))
  expect(desk.frames.current()).toBe(before)
  expect(stills.get(frame(3))).toBeDefined()
  expect(asked).toHaveLength(1)
  const steps = store.getState().history?.past.length
  edit(store, (reel) => reel)
  expect(store.getState().history?.past.length).toBe(steps)
})
