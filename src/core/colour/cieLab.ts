import { assert } from '../base/assert.ts'
import { applyMatrix3, invertMatrix3, type Matrix3 } from './matrix3.ts'
import { mapTriple, type Triple } from './triple.ts'

/** CIE 1976 L* (0…100), a*, b*. */
export type Lab = readonly [l: number, a: number, b: number]

/** XYZ of a chromaticity, with Y = 1. */
const xyzOf = (x: number, y: number): Triple => [x / y, 1, (1 - x - y) / y]

/** Reference white D65 and the primaries: BT.709-6 §1, items 1.3 and 1.4. */
const WHITE = xyzOf(0.3127, 0.329)
const RED = xyzOf(0.64, 0.33)
const GREEN = xyzOf(0.3, 0.6)
const BLUE = xyzOf(0.15, 0.06)

/**
 * Linear R, G, B (0…1) → X, Y, Z, each as a part of white's: the primaries so scaled that together
 * they make white.
 */
const RGB_TO_PARTS: Matrix3 = (() => {
  const row = (c: 0 | 1 | 2): Triple => [RED[c], GREEN[c], BLUE[c]]
  const rows: Matrix3 = [row(0), row(1), row(2)]
  const inverse = invertMatrix3(rows)
  assert(inverse !== undefined, 'the primaries lie on one line')
  const scale = applyMatrix3(inverse, WHITE)
  const scaled = (c: 0 | 1 | 2): Triple => mapTriple(rows[c], (v, k) => (v * scale[k]) / WHITE[c])
  return [scaled(0), scaled(1), scaled(2)]
})()

/** f of CIE 15:2004 §8.2.1.1 (clause from memory): a cube root, and near black a straight line. */
const labRoot = (part: number): number =>
  part > (24 / 116) ** 3 ? Math.cbrt(part) : (841 / 108) * part + 16 / 116

/** Signal → light of a reference display with black at 0 (BT.1886 annex 1), which shows 0…1 only. */
const shownLight = (signal: number): number => Math.min(Math.max(signal, 0), 1) ** 2.4

/**
 * R′G′B′ (0 black, 1 peak; what is outside is shown as the nearer end) → the L*a*b* of what a
 * display of BT.709 primaries shows, by its own white.
 */
export const displayedRgbToLab = ([red, green, blue]: Triple): Lab => {
  const [r, g, b] = [shownLight(red), shownLight(green), shownLight(blue)]
  const [byX, byY, byZ] = RGB_TO_PARTS
  const x = labRoot(byX[0] * r + byX[1] * g + byX[2] * b)
  const y = labRoot(byY[0] * r + byY[1] * g + byY[2] * b)
  const z = labRoot(byZ[0] * r + byZ[1] * g + byZ[2] * b)
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)]
}
