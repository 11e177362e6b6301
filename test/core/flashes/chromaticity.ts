import type { Triple } from '../../../src/core/colour/triple.ts'

/**
 * u′v′ (CIE 1976 UCS) of linear light with the primaries of BT.709, by the matrix of IEC 61966-2-1
 * (four places, from memory).
 */
export const chromaticity = ([r, g, b]: Triple): readonly [u: number, v: number] => {
  const x = 0.4124 * r + 0.3576 * g + 0.1805 * b
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b
  const z = 0.0193 * r + 0.1192 * g + 0.9505 * b
  const sum = x + 15 * y + 3 * z
  return [(4 * x) / sum, (9 * y) / sum]
}
