import { at } from '../core/base/assert.ts'
import { displaySignal } from '../core/colour/displaySignal.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import type { Still } from '../core/picture/still.ts'

const LARGEST = 255

/** Bytes turned into characters at once: engines limit the arguments of a call. */
const PIECE = 8192

const base64 = (bytes: Uint8Array): string => {
  let characters = ''
  for (let from = 0; from < bytes.length; from += PIECE)
    characters += String.fromCharCode(...bytes.subarray(from, from + PIECE))
  return btoa(characters)
}

/** A still as a display of sRGB is to be sent it: R, G, B of 8 bits, pixel by pixel. */
const displayBytes = ({ rgb }: Still, matrix: MatrixName): Uint8Array => {
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

/**
 * A still as a PNG picture (ISO/IEC 15948) of 8 bits for a page, as a data: address. It shows what
 * a BT.1886 display would, on one of sRGB; levels past black and peak are shown as the nearer end.
 */
export const pngDataUri = async (still: Still, matrix: MatrixName): Promise<string> => {
  const { encode } = await import('fast-png')
  const { width, height } = still
  const png = encode({ width, height, channels: 3, depth: 8, data: displayBytes(still, matrix) })
  return `data:image/png;base64,${base64(png)}`
}
