import { type Problem, problem } from '../base/problem.ts'
import { checkCdl } from '../colour/cdl.ts'
import { LARGEST_NUMBER, MOST_CUBE_POINTS, MOST_CURVE_POINTS, MOST_STEPS } from '../job/limits.ts'
import type { ProcessList, ProcessStep } from './processList.ts'

const isFine = (value: number): boolean => Math.abs(value) <= LARGEST_NUMBER

const tableProblem = (step: ProcessStep): string | undefined => {
  if (step.kind !== 'curve' && step.kind !== 'cube') return undefined
  const { points, values } = step
  const most = step.kind === 'curve' ? MOST_CURVE_POINTS : MOST_CUBE_POINTS
  const count = step.kind === 'curve' ? step.channels * points : 3 * points ** 3
  if (points < 2 || points > most) return `has ${points} places; 2 to ${most} can be carried`
  if (values.length !== count) return `has ${values.length} values where ${count} are needed`
  return undefined
}

const rangeProblem = (step: ProcessStep): string | undefined => {
  if (step.kind !== 'range') return undefined
  const { low, high } = step
  if (!low && !high) return 'has no limit; give one'
  if (low && high && high[0] <= low[0]) return 'has its upper limit not above its lower'
  if (low && high && high[1] < low[1]) return 'turns the signal over, which no range does'
  return undefined
}

const numbersOf = (step: ProcessStep): readonly number[] => {
  if (step.kind === 'matrix') return [...step.rows.flat(), ...step.offset]
  if (step.kind === 'range') return [...(step.low ?? []), ...(step.high ?? [])]
  if (step.kind === 'cdl')
    return [...step.cdl.slope, ...step.cdl.offset, ...step.cdl.power, step.cdl.saturation]
  return step.values
}

/** Every reason why a process list cannot be carried by a job, each naming its step from 1. */
export const checkProcessList = ({ steps }: ProcessList): readonly Problem[] => {
  const problems: Problem[] = []
  const field = (index: number) => ({ field: `steps.${index}` })
  if (steps.length === 0 || steps.length > MOST_STEPS)
    problems.push(problem('too-large', `A process list has 1 to ${MOST_STEPS} steps.`))
  for (const [index, step] of steps.entries()) {
    const says = tableProblem(step) ?? rangeProblem(step)
    if (says)
      problems.push(
        problem('out-of-range', `Step ${index + 1} (${step.kind}) ${says}.`, field(index)),
      )
    if (!numbersOf(step).every(isFine))
      problems.push(
        problem(
          'out-of-range',
          `Step ${index + 1} (${step.kind}) has a number past ±${LARGEST_NUMBER}.`,
          field(index),
        ),
      )
    const cdl = step.kind === 'cdl' ? checkCdl(step.cdl) : undefined
    if (cdl && !cdl.ok)
      problems.push(
        problem('out-of-range', `Step ${index + 1}: ${cdl.problems[0].says}`, field(index)),
      )
  }
  return problems
}
