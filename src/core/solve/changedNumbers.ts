import { at } from '../base/assert.ts'
import type { Grade } from '../colour/grade.ts'
import { allOf } from '../colour/gradeViews.ts'
import type { GradeTerm } from './solveChannel.ts'

/**
 * A number of a grade that is another now. Without a channel it is saturation, or the *all* view of
 * a triple whose three numbers moved alike.
 */
export type ChangedNumber = {
  readonly term: GradeTerm | 'saturation'
  readonly channel?: 0 | 1 | 2
  readonly from: number
  readonly to: number
}

/** Moves that differ by less than this are alike: two roundings to a thousandth. */
const ALIKE = 0.00101

/** What differs between two grades, in the order of the bench. */
export const changedNumbers = (before: Grade, after: Grade): readonly ChangedNumber[] => [
  ...(['lift', 'gamma', 'gain'] as const).flatMap((term): ChangedNumber[] => {
    const steps = after[term].map((value, c) => value - at(before[term], c))
    const areAll = steps.every((step) => step !== 0)
    if (areAll && Math.max(...steps) - Math.min(...steps) < ALIKE)
      return [{ term, from: allOf(before[term]), to: allOf(after[term]) }]
    return ([0, 1, 2] as const).flatMap((channel) => {
      const [from, to] = [before[term][channel], after[term][channel]]
      return from === to ? [] : [{ term, channel, from, to }]
    })
  }),
  ...(before.saturation === after.saturation
    ? []
    : [{ term: 'saturation' as const, from: before.saturation, to: after.saturation }]),
]
