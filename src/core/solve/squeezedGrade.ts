import type { WeightedColours } from '../census/weightedColours.ts'
import type { Limits } from '../tolerance/profile.ts'
import { boundsOf, PLACE } from './gradeVector.ts'

/** What the levels are taken inside the limits by, so that none is on one. */
const INSIDE = 0.01

/**
 * A grade that takes all levels between the limits in a straight line: far from the least change,
 * and a place to start where the present grade is too far out to find a way.
 */
export const squeezedGrade = (
  { colours }: WeightedColours,
  present: Float64Array,
  [low, high]: Limits,
): Float64Array => {
  const least = colours.reduce((a, b) => Math.min(a, b), Infinity)
  const most = colours.reduce((a, b) => Math.max(a, b), -Infinity)
  const slope = ((high - low) * (1 - 2 * INSIDE)) / Math.max(most - least, 0.01)
  const from = low + (high - low) * INSIDE
  return present.map((value, place) => {
    const [lowest, highest] = boundsOf(place)
    const within = (number: number) => Math.min(Math.max(number, lowest), highest)
    if (place === PLACE.saturation) return Math.min(value, 1)
    if (place >= PLACE.gamma && place < PLACE.gain) return 1
    return within(from + slope * ((place < PLACE.gamma ? 0 : 1) - least))
  })
}
