import { at } from '../base/assert.ts'
import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import type { WeightedColours } from '../census/weightedColours.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import { LEAST_SLOPE } from '../colour/gradeBounds.ts'
import type { Triple } from '../colour/triple.ts'
import { type ChangedNumber, changedNumbers } from './changedNumbers.ts'
import { evenColours } from './evenColours.ts'
import { boundsOf, gradeVector, NUMBERS, rounded, vectorGrade } from './gradeVector.ts'
import { leastSquares } from './leastSquares.ts'
import { levelQuantiles, lumaSpan, QUANTILES } from './levelQuantiles.ts'

export type MatchQuestion = {
  /** Of the cue, R′G′B′ before the grade. */
  readonly colours: WeightedColours
  /** The cue's present grade. */
  readonly grade: Grade
  /** What it is to look like, R′G′B′ as delivered: another cue after its grade, or a still. */
  readonly reference: WeightedColours
}

export type Matched = {
  readonly grade: Grade
  readonly changed: readonly ChangedNumber[]
  /** How far the two spreads of levels are apart, root mean square, as signal. */
  readonly apartBefore: number
  readonly apartAfter: number
}

/** Colours that stand for a picture: enough for quantiles, few enough to sort over and over. */
const COLOURS = 512

/** Past this a difference counts by its size and not by its square: content that is not there. */
const ALIKE = 0.01

/** What a change of 1 in a number costs, beside a squared difference of each level. */
const PULL = 0.001

const MOST_STEPS = 40

/** Levels closer together than this say nothing of how to match. */
const LEAST_SPAN = 0.01

/** A root whose square is half a square near 0 and grows as its size far off (Huber, smoothed). */
const robust = (difference: number): number => {
  const far = difference / ALIKE
  return Math.sign(difference) * ALIKE * Math.sqrt(2 * (Math.sqrt(1 + far * far) - 1))
}

const isRising = ({ lift, gain }: Grade): boolean =>
  gain.every((white, c) => white - at(lift, c) >= LEAST_SLOPE)

/** A grade's numbers as the fields show them. */
const tidied = (grade: Grade): Grade => vectorGrade(gradeVector(grade).map(rounded))

/**
 * The grade that brings the spread of a cue's levels to a reference's: least squares of the
 * differences of quantiles, of R′, G′, B′, luma and each channel less luma. What is in one picture
 * and not in the other moves quantiles too; it is held down in three ways: the outer 2 % are left
 * out, large differences count by their size and not its square, and every number is drawn back to
 * the present grade, so that it moves only for what many levels agree on. Of pictures with little
 * in common it can make no match: see `apartAfter`, and look.
 *
 * Refuses where there is no colour, or all of a picture is one level.
 */
export const matchTo = ({ colours, grade, reference }: MatchQuestion): Result<Matched> => {
  for (const [field, { weights }] of [
    ['cue', colours],
    ['reference', reference],
  ] as const)
    if (!weights.some((weight) => weight > 0))
      return fail(
        problem('missing', `The colours of the ${field} are not known; let it be measured first.`, {
          field,
        }),
      )
  const own = evenColours(colours, COLOURS)
  const graded = new Float64Array(own.length)
  const quantilesUnder = (tried: Grade): Float64Array => {
    for (let i = 0; i < own.length; i += 3)
      graded.set(gradeColour([at(own, i), at(own, i + 1), at(own, i + 2)] as Triple, tried), i)
    const quantiles = new Float64Array(QUANTILES)
    levelQuantiles(graded, quantiles)
    return quantiles
  }
  const wanted = new Float64Array(QUANTILES)
  levelQuantiles(evenColours(reference, COLOURS), wanted)
  const present = quantilesUnder(grade)
  for (const [field, quantiles] of [
    ['cue', present],
    ['reference', wanted],
  ] as const)
    if (lumaSpan(quantiles) < LEAST_SPAN)
      return fail(
        problem('conflict', `The ${field} is all of one level; match by a picture with contrast.`, {
          field,
        }),
      )

  const start = gradeVector(grade)
  const pull = Math.sqrt(PULL * QUANTILES)
  const residualsAt = (numbers: readonly number[]): Float64Array => {
    const reached = quantilesUnder(vectorGrade(Float64Array.from(numbers)))
    const residuals = new Float64Array(QUANTILES + NUMBERS)
    for (let i = 0; i < QUANTILES; i++) residuals[i] = robust(at(reached, i) - at(wanted, i))
    for (let i = 0; i < NUMBERS; i++)
      residuals[QUANTILES + i] = pull * (at(numbers, i) - at(start, i))
    return residuals
  }
  const places = [...start.keys()]
  const bounds = {
    low: places.map((place) => boundsOf(place)[0]),
    high: places.map((place) => boundsOf(place)[1]),
  }
  const found = tidied(
    vectorGrade(Float64Array.from(leastSquares(residualsAt, [...start], bounds, MOST_STEPS))),
  )
  if (!isRising(found))
    return fail(
      problem(
        'conflict',
        'The two pictures have too little in common: only a grade that turns light and dark round would match them.',
        { field: 'reference' },
      ),
    )
  const apart = (quantiles: Float64Array) =>
    Math.sqrt(quantiles.reduce((sum, q, i) => sum + (q - at(wanted, i)) ** 2, 0) / QUANTILES)
  return ok({
    grade: found,
    changed: changedNumbers(grade, found),
    apartBefore: apart(present),
    apartAfter: apart(quantilesUnder(found)),
  })
}
