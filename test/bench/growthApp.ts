import { startChecker } from '../../src/app/checker.ts'
import type { Workers } from '../../src/app/workers.ts'
import { cuesOfReel } from '../../src/core/job/cueList.ts'
import { newHistory } from '../../src/core/job/history.ts'
import { frame } from '../../src/core/time/frame.ts'
import type { Verdict } from '../../src/core/tolerance/verdict.ts'
import { createAppStore } from '../../src/store/appStore.ts'
import { checkKeyOf } from '../../src/store/checkKey.ts'
import { NO_VERDICTS } from '../../src/store/verdictBook.ts'
import { seeded } from '../kernel/randomPictures.ts'
import { REEL_ID } from '../support/sampleJob.ts'
import { CUE_FRAMES, jobOf } from './growthJobs.ts'

const RUNS = 3
/** Longer than a change is left to settle before measuring begins. */
const SETTLED_MS = 400

const INSIDE = { low: 0, high: 1 }
const VERDICT: Verdict = {
  profile: 'ebu-r103-v3',
  isInside: true,
  r: INSIDE,
  g: INSIDE,
  b: INSIDE,
  y: INSIDE,
  worstFrame: frame(0),
  areaOutside: 0,
  areaBelow: 0,
  areaAbove: 0,
  frames: CUE_FRAMES,
  framesOutside: 0,
}

const pause = (milliseconds: number) =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds)
  })

/** Milliseconds of processor time a cue until the app has all verdicts, `unknown` of them new. */
const run = async (count: number, unknown: number): Promise<number> => {
  const job = jobOf(count, seeded(5))
  const store = createAppStore()
  // A worker that has each verdict at once: what is left is what the app itself does.
  const passes = async () => ({ verdict: VERDICT, census: undefined })
  const workers = { passes } as unknown as Workers
  store.setState({ history: newHistory(job), reelId: REEL_ID })
  const known = cuesOfReel(job, REEL_ID).slice(0, count - unknown)
  const keys = known.map((cue) => checkKeyOf(store.getState(), cue) ?? '')
  const entries = new Map(keys.map((key) => [key, VERDICT]))
  store.setState({ verdicts: { ...NO_VERDICTS, entries, version: entries.size } })
  const begun = process.cpuUsage()
  startChecker(store, workers, {
    isWanted: () => false,
    keep: () => undefined,
    keepLook: () => undefined,
    get: () => undefined,
    whenKept: async () => undefined,
  })
  store.setState({ media: 'ready' })
  const late = performance.now() + 60_000
  while (store.getState().verdicts.entries.size < count) {
    if (performance.now() > late) throw new Error('the app did not measure its cues')
    await pause(SETTLED_MS)
  }
  const { user, system } = process.cpuUsage(begun)
  return (user + system) / 1000 / unknown
}

/** What measuring a cue costs the app's own thread besides, in a job of `count` cues. */
export const appOverCues = async (count: number, unknown: number): Promise<readonly number[]> => {
  const times: number[] = []
  for (let i = 0; i < RUNS; i++) times.push(await run(count, unknown))
  return times
}
