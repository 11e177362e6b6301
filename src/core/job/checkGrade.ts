import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { checkCdl, gradeToCdl } from '../colour/cdl.ts'
import type { Grade } from '../colour/grade.ts'
import { LARGEST_NUMBER, SMALLEST_GAMMA } from './limits.ts'

const isHuge = (value: number): boolean => Math.abs(value) > LARGEST_NUMBER

/**
 * Refuses a grade that ASC CDL v1.2 cannot carry (gain below lift, gamma not above 0, saturation
 * below 0, anything not finite), and numbers past the limits of a job.
 */
export const checkGrade = (grade: Grade): Result<Grade> => {
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
  return ok(grade)
}
