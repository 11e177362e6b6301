import { at } from '../base/assert.ts'
import { type Descent, descendMoves, keepsSlopes, moved } from './descendMoves.ts'
import type { Margins } from './excessCost.ts'
import type { Move } from './gradeMoves.ts'
import { rounded, stepOf } from './gradeVector.ts'

/** How a set of moves is made, and whether the grade it makes passes by the pixels. */
type Passing = {
  readonly descent: Descent
  readonly passes: (vector: Float64Array) => boolean
}

/** The weight of the excess where little of it is left. */
export const HEAVY = 1e8

/** Colours farther from all limits than this are not looked at while a grade is settled. */
const NEAR = 0.12

const FIRST_MARGIN = 0.001
const MOST_MARGIN = 0.1
const HALVINGS = 5
const SIDE_HALVINGS = 3

const NO_MARGIN: Margins = { low: 0, high: 0 }

/** What may be missing of the steps that are kept, squared: a thousandth of a signal. */
const MISSING = 1e-6

const keepsContrast = ({ present, floor }: Descent, vector: Float64Array): boolean =>
  keepsSlopes(present, vector) && floor.at(vector) <= MISSING

/** The vector rounded to what is shown, where it was changed. */
const roundedVector = (present: Float64Array, vector: Float64Array): Float64Array =>
  vector.map((value, place) => (value === at(present, place) ? value : rounded(value, place)))

/**
 * Takes amounts that nearly pass, or more than pass, to a rounded grade that passes with little to
 * spare: the colours stand for many pixels, so the limits are moved for them, both at once and then
 * each by itself, until the pixels just pass. Undefined where these moves cannot.
 */
export const passMoves = (
  { descent: whole, passes }: Passing,
  moves: readonly Move[],
  start: readonly number[],
): Float64Array | undefined => {
  const { present, cost, excess } = whole
  const near = { low: NEAR, high: NEAR }
  const descent = { ...whole, excess: excess.near(moved(present, moves, start), near) }
  let amounts = start
  let best: Float64Array | undefined
  let bestCost = Number.POSITIVE_INFINITY
  const tryMargins = (margins: Margins): boolean => {
    const settled = descendMoves(descent, moves, amounts, margins, HEAVY, 8)
    const vector = roundedVector(present, moved(present, moves, settled))
    if (!keepsContrast(whole, vector) || !passes(vector)) return false
    const value = cost.costAt(vector)
    if (value < bestCost) {
      amounts = settled
      best = vector
      bestCost = value
    }
    return true
  }
  /** The least margin that passes, between one that does not and one that does. */
  const halve = (marginsOf: (m: number) => Margins, from: number, to: number, times: number) => {
    let [fails, passing] = [from, to]
    for (let n = 0; n < times; n++) {
      const middle = (fails + passing) / 2
      if (tryMargins(marginsOf(middle))) passing = middle
      else fails = middle
    }
    return passing
  }
  const both = (m: number): Margins => ({ low: m, high: m })
  const sign = tryMargins(NO_MARGIN) ? -1 : 1
  let reached = 0
  let next = sign * FIRST_MARGIN
  while (Math.abs(next) < MOST_MARGIN && tryMargins(both(next)) === sign < 0) {
    reached = next
    next *= 3
  }
  if (sign > 0 && Math.abs(next) >= MOST_MARGIN) return undefined
  const margin =
    sign < 0 ? halve(both, next, reached, HALVINGS) : halve(both, reached, next, HALVINGS)
  const spare = margin - Math.max(0.004, Math.abs(margin))
  const low = halve((m) => ({ low: m, high: margin }), spare, margin, SIDE_HALVINGS)
  halve((m) => ({ low, high: m }), spare, margin, SIDE_HALVINGS)
  return best && drawBack({ descent, passes }, moves, best)
}

/** Each move taken back towards the present grade by whole steps, as far as it still passes. */
const drawBack = (
  { descent, passes }: Passing,
  moves: readonly Move[],
  from: Float64Array,
): Float64Array => {
  const { present, cost } = descent
  let vector = from
  let value = cost.costAt(vector)
  for (const move of moves) {
    const first = at(move, 0)
    const step = stepOf(first)
    const gone = at(vector, first) - at(present, first)
    const most = Math.floor(Math.abs(gone) / step)
    const backBy = (steps: number): Float64Array => {
      const tried = Float64Array.from(vector)
      for (const place of move)
        tried[place] = rounded(at(vector, place) - Math.sign(gone) * steps * step, place)
      return tried
    }
    let fine = 0
    for (let by = 1; by <= most; by *= 2) {
      const tried = backBy(by)
      const after = cost.costAt(tried)
      if (!(after < value) || !keepsContrast(descent, tried) || !passes(tried)) break
      fine = by
      value = after
    }
    for (let by = fine / 2; by >= 1; by /= 2) {
      const tried = backBy(fine + by)
      const after = cost.costAt(tried)
      if (!(after < value) || !keepsContrast(descent, tried) || !passes(tried)) continue
      value = after
      fine += by
      value = after
    }
    if (fine > 0) vector = backBy(fine)
  }
  return vector
}
