import { at } from '../base/assert.ts'
import { LEAST_SLOPE } from '../colour/gradeBounds.ts'
import type { ContrastFloor } from './contrastFloor.ts'
import type { ExcessCost, Margins } from './excessCost.ts'
import type { GradeCost } from './gradeCost.ts'
import type { Move } from './gradeMoves.ts'
import { boundsOf, NUMBERS, PLACE } from './gradeVector.ts'
import { type LimitedForm, limitedStep } from './limitedStep.ts'
import { normalSums } from './normalSums.ts'

/** What is to be small, and the grade it starts from. */
export type Descent = {
  readonly present: Float64Array
  readonly cost: GradeCost
  readonly excess: ExcessCost
  readonly floor: ContrastFloor
}

/** Whether every channel still rises (or falls, where it fell before) as much as it must. */
export const keepsSlopes = (present: Float64Array, vector: Float64Array): boolean => {
  const slopeOf = (of: Float64Array, c: number) => at(of, PLACE.gain + c) - at(of, PLACE.lift + c)
  return [0, 1, 2].every((c) => {
    const before = slopeOf(present, c)
    const least = Math.min(LEAST_SLOPE, Math.abs(before))
    return slopeOf(vector, c) * (before < 0 ? -1 : 1) >= least
  })
}

/** The vector with each move made from the present grade. */
export const moved = (
  present: Float64Array,
  moves: readonly Move[],
  amounts: readonly number[],
): Float64Array => {
  const vector = Float64Array.from(present)
  for (const [k, move] of moves.entries())
    for (const place of move) vector[place] = at(vector, place) + at(amounts, k)
  return vector
}

/** How far a move may go so that its numbers stay within bounds; not moving always may. */
const spanOf = (present: Float64Array, move: Move): readonly [low: number, high: number] => [
  Math.min(0, Math.max(...move.map((place) => boundsOf(place)[0] - at(present, place)))),
  Math.max(0, Math.min(...move.map((place) => boundsOf(place)[1] - at(present, place)))),
]

/** A step that gains less than this part is the last. */
const LEAST_GAIN = 3e-5
const MOST_DAMPING = 1e5

/** How much all limits of an amount's span weigh against those of the colours. */
const SPAN_PART = 1

/** And a missing step of contrast. */
const FLOOR_PART = 0.01

/** The form that a step is the least of, in amounts of the moves, with all limits near. */
const formAt = (
  { present, cost, excess, floor }: Descent,
  moves: readonly Move[],
  amounts: readonly number[],
  margins: Margins,
  damping: number,
): LimitedForm => {
  const n = moves.length
  const vector = moved(present, moves, amounts)
  const sums = normalSums()
  cost.addNormal(vector, sums)
  const outside = excess.rowsAt(vector, margins)
  const steps = floor.rowsAt(vector)
  const rows = {
    past: [...outside.past, ...steps.past],
    slopes: [...outside.slopes, ...steps.slopes],
    parts: [...outside.parts, ...steps.past.map(() => FLOOR_PART)],
  }
  const curve = new Float64Array(n * n)
  for (const [k, own] of moves.entries())
    for (const [l, other] of moves.entries()) {
      let sum = 0
      for (const p of own) for (const q of other) sum += at(sums.curve, p * NUMBERS + q)
      curve[k * n + l] = k === l ? sum * (1 + damping) + 1e-9 : sum
    }
  const count = rows.past.length
  const slopes = new Float64Array((count + 2 * n) * n)
  for (let row = 0; row < count; row++)
    for (const [k, move] of moves.entries()) {
      let sum = 0
      for (const p of move) sum += rows.slopes[row * NUMBERS + p] as number
      slopes[row * n + k] = sum
    }
  const spans = moves.flatMap((move, k) => {
    const [low, high] = spanOf(present, move)
    slopes[(count + 2 * k) * n + k] = -1
    slopes[(count + 2 * k + 1) * n + k] = 1
    return [low - at(amounts, k), at(amounts, k) - high]
  })
  return {
    slope: Float64Array.from(moves, (move) => move.reduce((sum, p) => sum + at(sums.slope, p), 0)),
    curve,
    past: Float64Array.from([...rows.past, ...spans]),
    slopes,
    parts: Float64Array.from([...rows.parts, ...spans.map(() => SPAN_PART)]),
  }
}

/**
 * Amounts of the moves near `start` for which the cost and `by` times the excess are least: steps
 * to the least of a square form under straight limits, damped where they do not hold so far.
 */
export const descendMoves = (
  descent: Descent,
  moves: readonly Move[],
  start: readonly number[],
  margins: Margins,
  by: number,
  mostSteps: number,
): readonly number[] => {
  const { present, cost, excess, floor } = descent
  const spans = moves.map((move) => spanOf(present, move))
  const sumAt = (amounts: readonly number[]): number => {
    const vector = moved(present, moves, amounts)
    if (!keepsSlopes(present, vector)) return Number.POSITIVE_INFINITY
    return cost.costAt(vector) + by * (excess.at(vector, margins) + FLOOR_PART * floor.at(vector))
  }
  let amounts = start
  let value = sumAt(amounts)
  let damping = 1e-3
  for (let step = 0; step < mostSteps; step++) {
    const form = formAt(descent, moves, amounts, margins, damping)
    const n = moves.length
    const before = value
    while (damping < MOST_DAMPING) {
      const { values: move, gain } = limitedStep(form, by)
      if (!(gain > LEAST_GAIN * Math.abs(value))) return amounts
      const from = amounts
      const tried = from.map((amount, k) => {
        const [low, high] = at(spans, k)
        return Math.min(Math.max(amount + at(move, k), low), high)
      })
      const after = sumAt(tried)
      if (after < value) {
        amounts = tried
        value = after
        damping = Math.max(damping * 0.1, 1e-6)
        break
      }
      for (let k = 0; k < n; k++)
        form.curve[k * n + k] = (at(form.curve, k * n + k) * (1 + 10 * damping)) / (1 + damping)
      damping *= 10
    }
    if (!(before - value > LEAST_GAIN * Math.abs(value))) return amounts
  }
  return amounts
}
