import { type Grade, IDENTITY_GRADE } from '../colour/grade.ts'
import { gradeOfCdl } from '../colour/gradeOfCdl.ts'
import { IDENTITY_MATRIX3, sameMatrix3 } from '../colour/matrix3.ts'
import { checkGrade } from '../job/checkGrade.ts'
import type { ProcessList, ProcessStep } from './processList.ts'

const isIdentity = (step: ProcessStep): boolean => {
  if (step.kind === 'matrix')
    return sameMatrix3(step.rows, IDENTITY_MATRIX3) && step.offset.every((value) => value === 0)
  if (step.kind !== 'range' || step.clamps) return false
  return [step.low, step.high].every((end) => end === null || end[0] === end[1])
}

/**
 * The grade that a process list is: where it has, besides steps that change nothing, at most one
 * ASC CDL forward. One that clamps (ASC CDL v1.2) is taken without its clamps, as corrections of
 * .cc, .ccc and .cdl files are. Undefined where a list does anything else, or what no grade can.
 */
export const gradeOfProcess = ({ steps }: ProcessList): Grade | undefined => {
  const [step, ...more] = steps.filter((each) => !isIdentity(each))
  if (step === undefined) return IDENTITY_GRADE
  if (more.length > 0 || step.kind !== 'cdl') return undefined
  if (step.style !== 'forward' && step.style !== 'forward-no-clamp') return undefined
  const grade = gradeOfCdl(step.cdl)
  return checkGrade(grade).ok ? grade : undefined
}
