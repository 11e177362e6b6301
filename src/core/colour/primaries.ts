import { assert } from '../base/assert.ts'
import { applyMatrix3, invertMatrix3, type Matrix3, multiplyMatrix3 } from './matrix3.ts'
import { mapTriple, type Triple } from './triple.ts'

/** Chromaticities of red, green and blue; white is D65 (x 0.3127, y 0.3290) for all of these. */
export type Primaries = {
  readonly red: readonly [x: number, y: number]
  readonly green: readonly [x: number, y: number]
  readonly blue: readonly [x: number, y: number]
}

/** BT.709-6 item 1.3; the same for sRGB (IEC 61966-2-1). */
export const BT709_PRIMARIES: Primaries = {
  red: [0.64, 0.33],
  green: [0.3, 0.6],
  blue: [0.15, 0.06],
}

/** BT.2020-2 table 3. */
export const BT2020_PRIMARIES: Primaries = {
  red: [0.708, 0.292],
  green: [0.17, 0.797],
  blue: [0.131, 0.046],
}

/** Those of SMPTE RP 431-2 with white D65, as CSS Color 4 §10.6 has Display P3. */
export const DISPLAY_P3_PRIMARIES: Primaries = {
  red: [0.68, 0.32],
  green: [0.265, 0.69],
  blue: [0.15, 0.06],
}

const xyzOf = ([x, y]: readonly [number, number]): Triple => [x / y, 1, (1 - x - y) / y]

const WHITE = xyzOf([0.3127, 0.329])

/** Linear R, G, B (0…1) → X, Y, Z with Y = 1 for white: primaries so scaled that they make white. */
const toXyz = ({ red, green, blue }: Primaries): Matrix3 => {
  const [r, g, b] = [xyzOf(red), xyzOf(green), xyzOf(blue)]
  const row = (c: 0 | 1 | 2): Triple => [r[c], g[c], b[c]]
  const rows: Matrix3 = [row(0), row(1), row(2)]
  const scale = applyMatrix3(inverseOf(rows), WHITE)
  const scaled = (c: 0 | 1 | 2): Triple => mapTriple(rows[c], (value, k) => value * scale[k])
  return [scaled(0), scaled(1), scaled(2)]
}

const inverseOf = (matrix: Matrix3): Matrix3 => {
  const inverse = invertMatrix3(matrix)
  assert(inverse !== undefined, 'the primaries lie on one line')
  return inverse
}

/** Linear R, G, B of one set of primaries to those of another; white stays (1, 1, 1). */
export const primariesMatrix = (from: Primaries, to: Primaries): Matrix3 =>
  multiplyMatrix3(inverseOf(toXyz(to)), toXyz(from))
