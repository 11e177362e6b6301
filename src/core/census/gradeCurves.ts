import { at } from '../base/assert.ts'
import { type Grade, gradeChannel } from '../colour/grade.ts'

/** Straight pieces of a channel's curve. */
export const PIECES = 256

/** Numbers of a piece: its low and its high line at its start, the slope of both, and none. */
export const PIECE = 4

/** What f32 rounds off a stored level and its sums, as a part of it. */
const LEVEL_ROUNDING = 2.4e-7
/** And the place of a level along the pieces, in pieces. */
const PLACE_ROUNDING = PIECES * 2 ** -21
/** And a weighted sum of three graded levels, as a part of each: sixteen roundings. */
const SUM_ROUNDING = 16 * 2 ** -24

/**
 * The three channels of a grade over the levels that occur, between two lines a piece: many levels
 * can be bounded without a power for each. So wide that sums of bounds stay bounds when they are
 * made with f32.
 */
export type GradeCurves = {
  /** Where each channel's first piece starts, and how many pieces make 1: red, green, blue, none. */
  readonly starts: Float32Array
  readonly piecesPerUnit: Float32Array
  /** PIECES pieces of red, then green, then blue. Slopes are a piece's, not a unit's. */
  readonly pieces: Float32Array
}

/** `range`: low R′, G′, B′ and high R′, G′, B′ of all levels before the grade. */
export const gradeCurves = (grade: Grade, range: Float32Array): GradeCurves => {
  const curves: GradeCurves = {
    starts: new Float32Array(4),
    piecesPerUnit: new Float32Array(4),
    pieces: new Float32Array(3 * PIECES * PIECE),
  }
  for (const c of [0, 1, 2] as const) {
    curves.starts[c] = at(range, c)
    curves.piecesPerUnit[c] = PIECES / Math.max(at(range, c + 3) - at(range, c), 1e-6)
    const step = 1 / at(curves.piecesPerUnit, c)
    fillCurve(curves, c, step, grade.lift[c], grade.gamma[c], grade.gain[c])
  }
  return curves
}

const fillCurve = (
  { starts, pieces }: GradeCurves,
  channel: number,
  step: number,
  lift: number,
  gamma: number,
  gain: number,
): void => {
  const from = at(starts, channel)
  const slope = gain - lift
  const power = 1 / gamma
  const width = Math.abs(slope) * step
  const levels = new Float64Array(PIECES + 1)
  const rises = new Float64Array(PIECES + 2)
  for (let i = 0; i <= PIECES; i++) {
    levels[i] = gradeChannel(from + i * step, lift, gamma, gain)
    if (i > 0) rises[i] = Math.abs(at(levels, i) - at(levels, i - 1))
  }
  const misplaced = (LEVEL_ROUNDING * (Math.abs(from) + PIECES * step)) / step + PLACE_ROUNDING
  const misplacedAtCorner = (misplaced * width) ** Math.min(1, power)
  for (let i = 0; i < PIECES; i++) {
    const v = lift + slope * (from + i * step)
    const next = v + slope * step
    const least = Math.min(v, next)
    const [start, end, rise] = [at(levels, i), at(levels, i + 1), at(rises, i + 1)]
    // A chord of x^p is off by at most width²/8 of its largest second derivative, which is at one
    // end: p·(p − 1)·x^p/x². By its corner at 0, where it may be steep, a piece's rise is the bound.
    const isStraight = power === 1 || least <= -3 * width
    const isCorner = !isStraight && least < 2 * width
    const curvature = Math.max(Math.abs(start) / v ** 2, Math.abs(end) / next ** 2)
    const bend = isStraight ? 0 : (width ** 2 / 8) * Math.abs(power * (power - 1)) * curvature
    const off =
      (isCorner ? rise + misplacedAtCorner : bend) +
      misplaced * (at(rises, i) + rise + at(rises, i + 2))
    const rounded = SUM_ROUNDING * (Math.max(Math.abs(start), Math.abs(end)) + off) + 1e-30
    const place = (channel * PIECES + i) * PIECE
    pieces[place] = start - off - rounded
    pieces[place + 1] = start + off + rounded
    pieces[place + 2] = end - start
  }
}
