import type { Grade } from '../../src/core/colour/grade.ts'
import type { Job } from '../../src/core/job/job.ts'
import { between, type Random } from '../kernel/randomPictures.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'

export const CUE_FRAMES = 10

/** One gamma, as its tables are no part of what may grow; the rest of each cue its own. */
export const randomGrade = (random: Random): Grade => {
  const three = (low: number, high: number) =>
    [between(random, low, high), between(random, low, high), between(random, low, high)] as const
  return {
    lift: three(-0.05, 0.05),
    gamma: [1.1, 1.1, 1.1],
    gain: three(0.9, 1.1),
    saturation: between(random, 0.8, 1.2),
  }
}

/** A job of `count` cues of ten frames; every third has a ramp. */
export const jobOf = (count: number, random: Random): Job =>
  sampleJob(
    Array.from({ length: count }, (_, i) => i * CUE_FRAMES),
    (cue, i) => ({ ...cue, grade: randomGrade(random), ramp: i % 3 === 1 ? 4 : 0 }),
    sampleReel({ frames: count * CUE_FRAMES }),
  )
