import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { createStillDesk } from '../../src/app/stillDesk.ts'
import type { Workers } from '../../src/app/workers.ts'
import { frame } from '../../src/core/time/frame.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob } from '../../src/store/document.ts'
import { movePlayhead, setPlayback } from '../../src/store/session.ts'
import { setTransferring } from '../../src/store/transferring.ts'
import { sampleJob } from '../support/sampleJob.ts'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

/** A desk whose worker makes a still at once, but cannot read frame 666. */
const setUp = () => {
  const store = createAppStore()
  const made: number[] = []
  const stills = async (_: string, { frame: at }: { frame: number }) => {
    if (at === 666) throw new Error('frame 666 cannot be read')
    made.push(at)
    return { width: 96, height: 54, rgb: new Uint16Array(0) }
  }
  const desk = createStillDesk(store, { stills } as unknown as Workers)
  showJob(store, sampleJob(), 'shelf')
  store.setState({ media: 'ready' })
  return { store, desk, made }
}
const rest = () => vi.advanceTimersByTimeAsync(1000)

test('stills around the line are made once it rests, those of its own cue first', async () => {
  const { store, made } = setUp()
  movePlayhead(store, 120)
  await vi.advanceTimersByTimeAsync(100)
  expect(made).toEqual([])
  await rest()
  expect(made.slice(0, 24).every((at) => at >= 100 && at < 250)).toBe(true)
  expect(new Set(made).size).toBe(made.length)
  expect(made.some((at) => at < 100)).toBe(true)
  expect(made.some((at) => at >= 400)).toBe(true)
})

test('the nearest still is one of the same cue', async () => {
  const { store, desk } = setUp()
  desk.request(frame(99))
  await vi.advanceTimersByTimeAsync(1)
  expect(desk.nearest(frame(100))).toBeUndefined()
  expect(desk.nearest(frame(0))?.frame).toBe(99)
  movePlayhead(store, 120)
  await rest()
  const near = desk.nearest(frame(100))?.frame ?? frame(-1)
  expect(near).toBeGreaterThanOrEqual(100)
  expect(near).toBeLessThan(110)
})

test('nothing is made while the reel plays; what was asked for comes after', async () => {
  const { store, desk, made } = setUp()
  setPlayback(store, { isPlaying: true })
  desk.request(frame(300))
  await rest()
  expect(made).toEqual([])
  setPlayback(store, { isPlaying: false })
  await rest()
  expect(made[0]).toBe(300)
})

test('a frame that cannot be read is told of once, and the others come all the same', async () => {
  const { store, desk, made } = setUp()
  for (const at of [10, 666, 20]) desk.request(frame(at))
  await rest()
  expect(store.getState().notice?.isProblem).toBe(true)
  store.setState({ notice: undefined })
  desk.request(frame(666))
  await rest()
  expect(store.getState().notice).toBeUndefined()
  expect(made).toContain(10)
  expect(made).toContain(20)
})

test('what is kept and what is asked for is bounded', async () => {
  const { desk, made } = setUp()
  for (let at = 0; at < 600; at++) desk.request(frame(at))
  await vi.advanceTimersByTimeAsync(100)
  expect(made.length).toBeLessThanOrEqual(202)
  expect(desk.get(frame(599))).toBeDefined()
})

test('what lies around waits for the end of a pass, and is made then', async () => {
  const { store, made } = setUp()
  movePlayhead(store, 120)
  const progress = { done: 0, total: 9, framesPerSecond: 0, secondsLeft: undefined }
  const run = { name: 'a', phase: 'writing', progress, isPaused: false } as const
  await rest()
  const before = made.length
  movePlayhead(store, 300)
  setTransferring(store, { run: { ...run, doneBefore: 0, heldFrames: [] } })
  await rest()
  expect(made.length).toBe(before)
  setTransferring(store, { run: undefined })
  await rest()
  expect(made.length).toBeGreaterThan(before)
})
