import { type Frame, frame } from '../time/frame.ts'
import { cueEnd, cueIndexAt } from './cueList.ts'
import type { Cue } from './job.ts'

/** Frames for the cue at the line, and for each of its neighbours. */
const HERE = 24
const NEAR = 6
/** How many cues before and after the line are in reach. */
const REACH = 12

/** `count` frames evenly over `first` up to `end`, each in the middle of its part; fewer if short. */
const evenFrames = (first: Frame, end: Frame, count: number): Frame[] => {
  const length = end - first
  const parts = Math.min(count, length)
  return Array.from({ length: parts }, (_, i) =>
    frame(first + Math.floor(((i + 0.5) * length) / parts)),
  )
}

/**
 * The frames to have small pictures of while the line is on `at`, so that a person can look through
 * the reel around it: evenly over each cue, nearest cues first. At most 168, however long the reel.
 */
export const framesInReach = (
  cues: readonly Cue[],
  reelFrames: number,
  at: Frame,
): readonly Frame[] => {
  const here = Math.max(0, cueIndexAt(cues, at))
  const framesOf = (index: number, count: number): Frame[] => {
    const cue = cues[index]
    return cue ? evenFrames(cue.first, cueEnd(cues, index, reelFrames), count) : []
  }
  const around = Array.from({ length: REACH }, (_, i) => [
    ...framesOf(here + 1 + i, NEAR),
    ...framesOf(here - 1 - i, NEAR),
  ])
  return [...framesOf(here, HERE), ...around.flat()]
}
