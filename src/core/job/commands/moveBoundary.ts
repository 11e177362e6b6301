import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { Frame } from '../../time/frame.ts'
import { cueChange } from '../change.ts'
import { cuesOfReel } from '../cueList.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'

/**
 * Moves the beginning of a cue to another frame, as far as its neighbours leave room: each cue
 * keeps at least one frame. The boundary then counts as decided by hand.
 */
export const moveBoundary = (job: Job, id: CueId, first: Frame): Result<LabelledChange> => {
  const cue = job.cues[id]
  if (!cue) return fail(problem('not-found', 'This cue is no longer in the job.'))
  if (cue.first === 0)
    return fail(problem('conflict', 'The first cue of a reel begins on its first frame.'))
  const cues = cuesOfReel(job, cue.reel)
  const index = cues.findIndex((other) => other.id === id)
  const low = (cues[index - 1]?.first ?? 0) + 1
  const high = (cues[index + 1]?.first ?? job.reels[cue.reel]?.frames ?? first + 1) - 1
  if (first < low || first > high)
    return fail(
      problem(
        'conflict',
        `The cue can begin on frame ${low} to ${high}: between its neighbours, a frame left for each.`,
        { frame: first },
      ),
    )
  if (first === cue.first) return ok({ label: 'Move boundary', change: {} })
  const moved = { ...cue, first, boundary: { kind: 'by-hand', confidence: 1 } } as const
  return ok({ label: 'Move boundary', change: cueChange([cue], [moved]) })
}
