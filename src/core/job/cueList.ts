import { type Frame, frame } from '../time/frame.ts'
import type { Cue, Job } from './job.ts'
import type { ReelId } from './recordIds.ts'

const sorted = new WeakMap<Job['cues'], Map<ReelId, readonly Cue[]>>()

/** The cues of a reel in order of their first frame. Worked out once for each state of the job. */
export const cuesOfReel = (job: Job, reelId: ReelId): readonly Cue[] => {
  const held = sorted.get(job.cues) ?? new Map<ReelId, readonly Cue[]>()
  sorted.set(job.cues, held)
  const known = held.get(reelId)
  if (known) return known
  const cues = Object.values<Cue>(job.cues)
    .filter((cue) => cue.reel === reelId)
    .sort((a, b) => a.first - b.first)
  held.set(reelId, cues)
  return cues
}

/** The place, from 0, of the cue that `at` belongs to; −1 before the first. */
export const cueIndexAt = (cues: readonly Cue[], at: Frame): number => {
  let low = 0
  let high = cues.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((cues[middle]?.first ?? Infinity) <= at) low = middle + 1
    else high = middle
  }
  return low - 1
}

/** The cue a frame of a reel belongs to; undefined outside the reel. */
export const cueAt = (job: Job, reelId: ReelId, at: Frame): Cue | undefined => {
  const reel = job.reels[reelId]
  if (!reel || at >= reel.frames) return undefined
  const cues = cuesOfReel(job, reelId)
  return cues[cueIndexAt(cues, at)]
}

/** The first frame after the cue at `index`: where the next begins, or the reel ends. */
export const cueEnd = (cues: readonly Cue[], index: number, reelFrames: number): Frame =>
  cues[index + 1]?.first ?? frame(reelFrames)

/** A cue's number as the ledger counts: from 1. */
export const cueNumber = (cues: readonly Cue[], cue: Cue): number => cueIndexAt(cues, cue.first) + 1
