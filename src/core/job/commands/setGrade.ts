import type { Result } from '../../base/result.ts'
import { type Grade, sameGrade } from '../../colour/grade.ts'
import { checkGrade } from '../checkGrade.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { cuesById, editCues } from './cueCommand.ts'

/**
 * Changes the grade of cues, each from its own. Refuses a grade that ASC CDL v1.2 cannot carry
 * (gain below lift, gamma not above 0, saturation below 0, anything not finite), and numbers past
 * the limits of a job.
 */
export const setGrade = (
  job: Job,
  ids: readonly CueId[],
  edit: (grade: Grade) => Grade,
  label = 'Grade',
): Result<LabelledChange> => {
  const cues = cuesById(job, ids)
  if (!cues.ok) return cues
  for (const cue of cues.value) {
    const checked = checkGrade(edit(cue.grade))
    if (!checked.ok) return checked
  }
  return editCues(job, ids, label, (cue) => {
    const grade = edit(cue.grade)
    return sameGrade(grade, cue.grade) ? cue : { ...cue, grade }
  })
}
