import { at } from '../base/assert.ts'
import { type Grade, gradeChannel } from '../colour/grade.ts'

/** Straight pieces of a channel's curve. */
export const PIECES = 256

/** What f64 rounds off in a sum of a few products, and f32 in a stored level: parts of it. */
const F64_ROUNDING = 1e-13
const F32_ROUNDING = 2.4e-7

/**
 * The three channels of a grade over the levels that occur, as straight pieces, and how far the
 * curve may be from each: many levels can be bounded without a power for each.
 */
export type GradeCurves = {
  /** Where each channel's first piece starts, and how many pieces make 1. */
  readonly starts: Float64Array
  readonly piecesPerUnit: Float64Array
  /** Levels at the ends of pieces: PIECES + 1 of red, then green, then blue. */
  readonly levels: Float64Array
  /** How far the curve can be from each piece, between the piece's ends: PIECES of each channel. */
  readonly bends: Float64Array
  /** How much past that a level can be that was stored as f32. */
  readonly slacks: Float64Array
}

/** `range`: low R′, G′, B′ and high R′, G′, B′ of all levels before the grade. */
export const gradeCurves = (grade: Grade, range: Float32Array): GradeCurves => {
  const curves: GradeCurves = {
    starts: new Float64Array(3),
    piecesPerUnit: new Float64Array(3),
    levels: new Float64Array(3 * (PIECES + 1)),
    bends: new Float64Array(3 * PIECES),
    slacks: new Float64Array(3 * PIECES),
  }
  for (const c of [0, 1, 2] as const) {
    const from = at(range, c)
    const step = Math.max(at(range, c + 3) - from, 1e-6) / PIECES
    curves.starts[c] = from
    curves.piecesPerUnit[c] = 1 / step
    fillCurve(curves, c, from, step, grade.lift[c], grade.gamma[c], grade.gain[c])
  }
  return curves
}

const fillCurve = (
  { levels, bends, slacks }: GradeCurves,
  channel: number,
  from: number,
  step: number,
  lift: number,
  gamma: number,
  gain: number,
): void => {
  const first = channel * (PIECES + 1)
  for (let i = 0; i <= PIECES; i++)
    levels[first + i] = gradeChannel(from + i * step, lift, gamma, gain)
  const power = 1 / gamma
  const width = Math.abs(gain - lift) * step
  const rise = (i: number): number =>
    i < 0 || i >= PIECES ? 0 : Math.abs(at(levels, first + i + 1) - at(levels, first + i))
  for (let i = 0; i < PIECES; i++) {
    const v = lift + (gain - lift) * (from + i * step)
    const least = Math.min(v, v + (gain - lift) * step)
    const end = Math.max(
      Math.abs(at(levels, first + i)) / v ** 2,
      Math.abs(at(levels, first + i + 1)) / (v + (gain - lift) * step) ** 2,
    )
    const around = rise(i - 1) + rise(i) + rise(i + 1)
    // A chord of x^p is off by at most width²/8 of its largest second derivative, which is at one
    // end: p·(p − 1)·x^p/x². By its corner at 0, where it may be steep, a piece's rise is the bound.
    const isStraight = power === 1 || least <= -3 * width
    const isCorner = !isStraight && least < 2 * width
    const bend = isStraight ? 0 : (width ** 2 / 8) * Math.abs(power * (power - 1)) * end
    bends[channel * PIECES + i] = isCorner ? rise(i) : bend
    const stored = F32_ROUNDING * (Math.abs(from) + PIECES * step)
    slacks[channel * PIECES + i] =
      (stored * around) / step +
      (isCorner ? ((stored * width) / step) ** Math.min(1, power) : 0) +
      F64_ROUNDING * (1 + Math.abs(at(levels, first + i)))
  }
}
