import { expect, it, vi } from 'vitest'
import { createRescanDesk } from '../../src/app/rescanDesk.ts'
import type { Workers } from '../../src/app/workers.ts'
import { ok } from '../../src/core/base/result.ts'
import { findStretches } from '../../src/core/conform/findStretches.ts'
import { createPrintTaker, type ReelPrints } from '../../src/core/conform/reelPrints.ts'
import { GRID_HEIGHT, GRID_WIDTH } from '../../src/core/shots/frameSignature.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { showJob, undo } from '../../src/store/document.ts'
import { cuesOf, jobOf, reelOf } from '../../src/store/queries.ts'
import { rescanCounts, rescanCountText } from '../../src/store/rescan.ts'
import { movePlayhead } from '../../src/store/session.ts'
import type { ReelCalls } from '../../src/work/reelCalls.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'
import { seeded } from '../support/seeded.ts'

/** Frames of the shots of a reel: smooth blobs that move, other ones in each shot. */
const SHOTS = [40, 50, 60, 50]
const FIRSTS = [0, 40, 90, 150]
const FRAMES = 200

const frameOf = (shot: number, t: number): Float32Array => {
  const random = seeded(shot + 1)
  const blobs = Array.from({ length: 7 }, () => [random(), random(), random()] as const)
  return Float32Array.from({ length: GRID_WIDTH * GRID_HEIGHT }, (_, i) => {
    const [x, y] = [(i % GRID_WIDTH) / GRID_WIDTH, Math.floor(i / GRID_WIDTH) / GRID_HEIGHT]
    return blobs.reduce((sum, [bx, by, speed], n) => {
      const dx = x - bx - 0.01 * t * (speed - 0.5)
      const dy = y - by - 0.006 * t * (n % 2 === 0 ? 1 : -1)
      return sum + 0.25 * Math.exp(-40 * (dx * dx + dy * dy))
    }, 0.1)
  })
}

const reelOfShots = (shots: readonly number[]): ReelPrints => {
  const taker = createPrintTaker(FRAMES)
  const chroma = new Float32Array(16 * 9)
  for (const shot of shots)
    for (let t = 0; t < (SHOTS[shot] ?? 0); t++)
      taker.push({ luma: frameOf(shot, t), cb: chroma, cr: chroma })
  return taker.finish([])
}

const OLD = [new File(['old'], 'old.mov')]
const FRESH = [new File(['fresh'], 'fresh.mov')]

/** The same by a list: source times on the reel as it was, record times on the new one. */
const RECUT = [
  ['ORLOP_RE', '10:00:00:00 10:00:01:15 01:00:00:00 01:00:01:15'],
  ['ORLOP_RE', '10:00:03:15 10:00:06:00 01:00:01:15 01:00:04:00'],
  ['ORLOP_RE', '10:00:01:15 10:00:03:15 01:00:04:00 01:00:06:00'],
  ['ORLOP_RE', '10:00:06:00 10:00:08:00 01:00:06:00 01:00:08:00'],
]
  .map(([reel, times], i) => `00${i + 1}  ${reel}  V  C  ${times}`)
  .join('\r\n')

/** A reel whose shots 2 and 3 changed places on another scan of it. */
const setUp = (list = RECUT) => {
  const store = createAppStore()
  showJob(
    store,
    sampleJob(FIRSTS, (cue) => cue, sampleReel({ frames: FRAMES })),
    'shelf',
  )
  let open = ''
  const calls: string[] = []
  const hold: { until: Promise<void> } = { until: Promise.resolve() }
  const passes = async (
    name: keyof ReelCalls,
    args: unknown,
    options?: { signal?: AbortSignal },
  ) => {
    calls.push(name)
    if (name === 'open') {
      open = (args as { files: File[] }).files[0]?.name ?? ''
      return ok({})
    }
    if (name === 'findStretches') {
      const { old, fresh } = args as { old: ReelPrints; fresh: ReelPrints }
      return findStretches(old, fresh)
    }
    await hold.until
    options?.signal?.throwIfAborted()
    return reelOfShots(open === 'old.mov' ? [0, 1, 2, 3] : [0, 2, 1, 3])
  }
  const saved = vi.fn()
  const save = async (name: string, make: () => Blob | Promise<Blob>): Promise<boolean> => {
    saved(name, await (await make()).text())
    return true
  }
  const pick = async () => new File([list], 'recut.edl')
  const desk = createRescanDesk(store, passes as unknown as Workers['passes'], save, pick)
  const media = sampleReel().media
  const facts = {
    ...media,
    ...{ name: 'fresh.mov', width: 2048, frames: FRAMES, rate: { num: 25, den: 1 }, bytes: 9 },
    matrix: undefined,
  } as unknown as MediaFacts
  const ask = () =>
    desk.ask({ files: OLD, name: 'old.mov' }, { files: FRESH, facts }, 'It differs.')
  const stage = () => store.getState().rescan?.stage
  return { store, desk, ask, stage, calls, hold, saved }
}

it('cues follow their pictures: looked at first, then one step, which undo takes back', async () => {
  const { store, desk, ask, stage, saved } = setUp()
  const answer = ask()
  expect(stage()).toEqual({ kind: 'asking' })
  await desk.follow()
  const found = stage()
  if (found?.kind !== 'found') throw new Error('nothing was found')
  expect(rescanCounts(found.plan).lost).toBe(0)
  expect(jobOf(store.getState())?.cues).toEqual(sampleJob(FIRSTS).cues)
  await desk.saveReport()
  expect(saved.mock.calls[0]?.[0]).toBe('Orlop-reel-1-followed.txt')
  expect(saved.mock.calls[0]?.[1]).toContain('Cues that follow their pictures: reel Orlop reel 1')
  desk.apply()
  expect(await answer).toBe('followed')
  const firsts = cuesOf(store.getState()).map(({ id, first }) => `${id} ${first}`)
  expect(firsts).toEqual(['cue-1 0', 'cue-3 40', 'cue-2 100', 'cue-4 150'])
  expect(reelOf(store.getState())?.media).toMatchObject({ width: 2048, name: 'fresh.mov' })
  expect(reelOf(store.getState())?.media.matrix).toBe('bt709')
  expect(store.getState().history?.past.map(({ label }) => label)).toEqual(['Follow pictures'])
  expect(store.getState().rescan).toBeUndefined()
  undo(store)
  expect(cuesOf(store.getState()).map(({ first }): number => first)).toEqual(FIRSTS)
  expect(reelOf(store.getState())?.media.name).toBe('orlop-1.mov')
})

it('it is stopped while it looks, and asks again', async () => {
  const { desk, ask, stage, hold, store } = setUp()
  void ask()
  let letOn = () => {}
  hold.until = new Promise((resolve) => {
    letOn = resolve
  })
  const following = desk.follow()
  await vi.waitFor(() => expect(stage()?.kind).toBe('looking'))
  desk.stop()
  letOn()
  await following
  expect(stage()).toEqual({ kind: 'asking' })
  expect(store.getState().notice).toBeUndefined()
})

it('left or used, the cues stay as they are', async () => {
  const { store, desk, ask } = setUp()
  const left = ask()
  desk.leave()
  expect(await left).toBe('left')
  const used = ask()
  desk.use()
  expect(await used).toBe('used')
  expect(store.getState().rescan).toBeUndefined()
  expect(store.getState().history?.past).toEqual([])
})

it('they follow a list as well, for which the old scan need not be there', async () => {
  const { store, desk, stage } = setUp()
  const facts = { ...sampleReel().media, name: 'fresh.mov', frames: FRAMES } as never
  const answer = desk.ask(undefined, { files: FRESH, facts }, 'It differs.')
  expect(store.getState().rescan?.canFollow).toBe(false)
  await desk.followList()
  const found = stage()
  if (found?.kind !== 'found') throw new Error('nothing was found')
  expect(rescanCountText(found.plan)).toBe('4 cues follow')
  desk.apply()
  expect(await answer).toBe('followed')
  const firsts = cuesOf(store.getState()).map(({ id, first }) => `${id} ${first}`)
  expect(firsts).toEqual(['cue-1 0', 'cue-3 40', 'cue-2 100', 'cue-4 150'])
})

it('a list of other reels is refused with the name that it should have', async () => {
  const { store, desk, ask, stage } = setUp(RECUT.replaceAll('ORLOP_RE', 'SKERRY'))
  void ask()
  await desk.followList()
  expect(stage()).toEqual({ kind: 'asking' })
  expect(store.getState().notice?.says).toMatch(/ORLOP_RE/u)
})

it('the line goes with the cue it was in', async () => {
  const { store, desk, ask } = setUp()
  movePlayhead(store, 60)
  void ask()
  await desk.followList()
  desk.apply()
  expect(store.getState().playhead).toBe(100)
  expect(store.getState().selection).toEqual(['cue-2'])
  expect(store.getState().history?.past.map(({ label }) => label)).toEqual(['Follow list'])
})

it('in a lost cue it stays where it is', async () => {
  const { store, desk, ask } = setUp(RECUT.split('\r\n').slice(0, 2).join('\r\n'))
  movePlayhead(store, 60)
  void ask()
  await desk.followList()
  desk.apply()
  expect(cuesOf(store.getState()).some(({ id }) => id === 'cue-2')).toBe(false)
  expect(store.getState().playhead).toBe(60)
})
