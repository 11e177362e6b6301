import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import { checkCdl, gradeToCdl } from '../../colour/cdl.ts'
import { type Grade, sameGrade } from '../../colour/grade.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { LARGEST_NUMBER, SMALLEST_GAMMA } from '../limits.ts'
import type { CueId } from '../recordIds.ts'
import { cuesById, editCues } from './cueCommand.ts'

const isHuge = (value: number): boolean => Math.abs(value) > LARGEST_NUMBER

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
    const grade = edit(cue.grade)
    for (const [channel, gamma] of grade.gamma.entries())
      if (!(gamma > 0) || !Number.isFinite(gamma))
        return fail(
          problem('out-of-range', `Gamma must be above 0; ${gamma} is not.`, {
            field: `gamma ${'RGB'[channel]}`,
          }),
        )
      else if (gamma < SMALLEST_GAMMA)
        return fail(
          problem('out-of-range', `Gamma ${gamma} is too small; give 0.000001 or more.`, {
            field: `gamma ${'RGB'[channel]}`,
          }),
        )
    for (const channel of [0, 1, 2] as const)
      if (grade.gain[channel] < grade.lift[channel])
        return fail(
          problem('out-of-range', 'Gain cannot go below lift: the picture would turn negative.', {
            field: `gain ${'RGB'[channel]}`,
          }),
        )
    const checked = checkCdl(gradeToCdl(grade))
    if (!checked.ok) return checked
    const { lift, gamma, gain, saturation } = grade
    if ([...lift, ...gamma, ...gain, saturation].some(isHuge))
      return fail(
        problem('out-of-range', 'The numbers of a grade go up to a million; give a smaller one.', {
          field: 'grade',
        }),
      )
  }
  return editCues(job, ids, label, (cue) => {
    const grade = edit(cue.grade)
    return sameGrade(grade, cue.grade) ? cue : { ...cue, grade }
  })
}
