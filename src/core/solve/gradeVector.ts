import { at } from '../base/assert.ts'
import type { Grade } from '../colour/grade.ts'
import { GRADE_BOUNDS } from '../colour/gradeBounds.ts'
import type { Triple } from '../colour/triple.ts'

/** Where each term's numbers start in a vector: lift, gamma, gain of red, green, blue; saturation. */
export const PLACE = { lift: 0, gamma: 3, gain: 6, saturation: 9 } as const

/** The numbers of a grade. */
export const NUMBERS = 10

export const gradeVector = ({ lift, gamma, gain, saturation }: Grade): Float64Array =>
  Float64Array.of(...lift, ...gamma, ...gain, saturation)

export const vectorGrade = (vector: Float64Array): Grade => {
  const tripleAt = (place: number): Triple => [
    at(vector, place),
    at(vector, place + 1),
    at(vector, place + 2),
  ]
  return {
    lift: tripleAt(PLACE.lift),
    gamma: tripleAt(PLACE.gamma),
    gain: tripleAt(PLACE.gain),
    saturation: at(vector, PLACE.saturation),
  }
}

const TERM_OF = (['lift', 'gamma', 'gain'] as const).flatMap((term) => [term, term, term])

/** Where a number of the vector may go, both ends included. */
export const boundsOf = (place: number): readonly [low: number, high: number] =>
  GRADE_BOUNDS[TERM_OF[place] ?? 'saturation']

/** What one step of a number is where a grade is rounded: finer than a field shows, or as fine. */
export const stepOf = (place: number): number => {
  const term = TERM_OF[place]
  return term === 'lift' || term === 'gain' ? 0.0001 : 0.001
}

/** The nearest number that is a whole count of steps, without the noise of a product. */
export const rounded = (value: number, place: number): number =>
  Number(value.toFixed(stepOf(place) === 0.0001 ? 4 : 3))
