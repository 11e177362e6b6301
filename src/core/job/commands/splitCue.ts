import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { Frame } from '../../time/frame.ts'
import { cueChange } from '../change.ts'
import { cueAt } from '../cueList.ts'
import type { LabelledChange } from '../history.ts'
import type { Cue, Job } from '../job.ts'
import type { CueId, ReelId } from '../recordIds.ts'

/** A new cue from `first` on, with the values of the cue it is cut from. */
export const splitCue = (
  job: Job,
  reelId: ReelId,
  first: Frame,
  newId: CueId,
): Result<LabelledChange> => {
  const cue = cueAt(job, reelId, first)
  if (!cue) return fail(problem('not-found', 'There is no cue at this frame to split.'))
  if (cue.first === first)
    return fail(problem('conflict', 'A cue already begins on this frame; move to another frame.'))
  const added = {
    ...cue,
    id: newId,
    first,
    ramp: 0,
    boundary: { kind: 'by-hand', confidence: 1 } as const,
    note: '',
    answers: [],
  } satisfies Cue
  return ok({ label: 'Split cue', change: cueChange([], [added]) })
}
