import { at } from '../core/base/assert.ts'
import { displaySignal } from '../core/colour/displaySignal.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import type { Still } from '../core/picture/still.ts'

const LARGEST = 255

/** A still as a display of sRGB is to be sent it: R, G, B of 8 bits, pixel by pixel. */
export const displayBytes = ({ rgb }: Still, matrix: MatrixName): Uint8Array => {
  const out = new Uint8Array(rgb.length)
  const level = (i: number) => (at(rgb, i) - 64) / 876
  for (let i = 0; i < rgb.length; i += 3)
    for (const [c, value] of displaySignal(
      [level(i), level(i + 1), level(i + 2)],
      matrix,
      'srgb',
    ).entries())
      out[i + c] = Math.round(LARGEST * value)
  return out
}
