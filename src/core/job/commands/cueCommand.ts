import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { cueChange } from '../change.ts'
import type { LabelledChange } from '../history.ts'
import type { Cue, Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'

/** The cues of these ids, or a problem naming the one that is not in the job. */
export const cuesById = (job: Job, ids: readonly CueId[]): Result<readonly Cue[]> => {
  const cues: Cue[] = []
  for (const id of ids) {
    const cue = job.cues[id]
    if (!cue) return fail(problem('not-found', `The job has no cue “${id}”; choose a cue again.`))
    cues.push(cue)
  }
  return ok(cues)
}

/** One labelled change that edits each of these cues alike. */
export const editCues = (
  job: Job,
  ids: readonly CueId[],
  label: string,
  edit: (cue: Cue) => Cue,
): Result<LabelledChange> => {
  const cues = cuesById(job, ids)
  return cues.ok ? ok({ label, change: cueChange(cues.value, cues.value.map(edit)) }) : cues
}
