import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { type Frame, frame } from '../../time/frame.ts'
import { cueChange } from '../change.ts'
import { cuesOfReel } from '../cueList.ts'
import type { LabelledChange } from '../history.ts'
import type { BoundaryFound, Cue, Job } from '../job.ts'
import { newCue } from '../newCue.ts'
import type { CueId, ReelId } from '../recordIds.ts'

/** Where a cue is to begin, and how that was found. */
export type Placement = {
  readonly first: Frame
  readonly ramp: number
  readonly boundary: BoundaryFound
}

/** A boundary that a person moved by up to this many frames is the one that was found there. */
const MOVED_BY = 5

const isMovedFrom = (first: Frame, byHand: readonly Cue[]): boolean =>
  byHand.some((cue) => Math.abs(cue.first - first) <= MOVED_BY)

/**
 * Adds cues at the places found. A place where a cue already begins, or from where a person has
 * moved its beginning by a few frames, keeps that cue; a new cue
 * begins with the values of the cue whose frames it takes, so nothing on screen changes. Of two
 * places on one frame the first counts; a place outside the reel is refused.
 */
export const placeCues = (
  job: Job,
  reelId: ReelId,
  places: readonly Placement[],
  newId: () => CueId,
): Result<LabelledChange> => {
  const frames = job.reels[reelId]?.frames
  if (frames === undefined) return fail(problem('not-found', 'This reel is no longer in the job.'))
  const outside = places.find(({ first }) => !(first >= 0 && first < frames))
  if (outside)
    return fail(
      problem('out-of-range', `A cue cannot begin outside the reel's ${frames} frames.`, {
        frame: outside.first,
      }),
    )
  const existing = cuesOfReel(job, reelId)
  const byHand = existing.filter(({ boundary }) => boundary.kind === 'by-hand')
  const taken = new Set(existing.map((cue) => cue.first))
  const added = places
    .filter(({ first }) => {
      const isFree = !taken.has(first) && !isMovedFrom(first, byHand)
      taken.add(first)
      return isFree
    })
    .map(({ first, ramp, boundary }) => {
      const from = existing.findLast((cue) => cue.first < first)
      const made = newCue(newId(), reelId, first, boundary, ramp)
      return from ? { ...made, grade: from.grade, framing: from.framing } : made
    })
  if (existing.length === 0 && !places.some(({ first }) => first === 0))
    added.unshift(newCue(newId(), reelId, frame(0), { kind: 'start', confidence: 1 }))
  return ok({ label: 'Find shots', change: cueChange([], added) })
}
