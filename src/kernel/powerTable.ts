import { HIGHEST_LEVEL } from '../core/colour/grade.ts'

/** Pieces to an octave, and the octaves covered: the same as in `assembly/power.ts`. */
const PIECES = 256
const FIRST_OCTAVE = -40
const END_OCTAVE = 16

/** f32 values of a table: intercept and slope of the identity, then of every piece. */
export const POWER_TABLE_LENGTH = 2 + 2 * PIECES * (END_OCTAVE - FIRST_OCTAVE)

/** Intercepts and slopes of the pieces of 1…2, each the chord moved by half its largest error. */
const octavePieces = (power: number): Float64Array => {
  const pieces = new Float64Array(2 * PIECES)
  for (let i = 0; i < PIECES; i++) {
    const start = 1 + i / PIECES
    const end = 1 + (i + 1) / PIECES
    const middle = (start + end) / 2
    const slope = (end ** power - start ** power) * PIECES
    const chord = start ** power - slope * start
    pieces[2 * i] = chord + (middle ** power - (chord + slope * middle)) / 2
    pieces[2 * i + 1] = slope
  }
  return pieces
}

/**
 * The table of x^power for `power4` of the WebAssembly module: x^power is met to about
 * 1e-6·|power·(power − 1)| of its value.
 */
export const fillPowerTable = (table: Float32Array, power: number): void => {
  const pieces = octavePieces(power)
  table[0] = 0
  table[1] = 1
  for (let octave = FIRST_OCTAVE; octave < END_OCTAVE; octave++) {
    const scale = 2 ** (octave * power)
    const slopeScale = scale / 2 ** octave
    const start = 2 + 2 * PIECES * (octave - FIRST_OCTAVE)
    for (let i = 0; i < 2 * PIECES; i += 2) {
      const intercept = (pieces[i] as number) * scale
      const slope = (pieces[i + 1] as number) * slopeScale
      const end = (1 + (i / 2 + 1) / PIECES) * 2 ** octave
      // As `gradeChannel`, no further than the highest level; a power too steep for numbers is 0
      // below 1 and there above it.
      const isMet = Math.abs(intercept) < Infinity && intercept + slope * end <= HIGHEST_LEVEL
      table[start + i] = isMet ? intercept : octave < 0 ? 0 : HIGHEST_LEVEL
      table[start + i + 1] = isMet ? slope : 0
    }
  }
}
