import { at } from '../core/base/assert.ts'
import { type Grade, gradeChannel, SATURATION_WEIGHTS } from '../core/colour/grade.ts'
import { type Framing, framingMap, isOpen } from '../core/picture/framing.ts'
import type { Still } from '../core/picture/still.ts'

const CODES = 1024

/** What each 10-bit code becomes in one channel. */
const channelTable = (grade: Grade, channel: 0 | 1 | 2): Float64Array => {
  const table = new Float64Array(CODES)
  const { lift, gamma, gain } = grade
  for (let code = 0; code < CODES; code++)
    table[code] = gradeChannel((code - 64) / 876, lift[channel], gamma[channel], gain[channel])
  return table
}

/**
 * A still graded and framed, as RGBA bytes for a canvas: each pixel the nearest one of the still, as
 * it is small and only to know a cue by; outside the picture it is black.
 */
export const stillPixels = (
  { width, height, rgb }: Still,
  grade: Grade,
  framing: Framing,
): Uint8ClampedArray<ArrayBuffer> => {
  const tables = [channelTable(grade, 0), channelTable(grade, 1), channelTable(grade, 2)] as const
  const [wr, wg, wb] = SATURATION_WEIGHTS
  const map = framingMap(framing, width, height)
  const pixels = new Uint8ClampedArray(width * height * 4)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const sx = Math.round(map.xx * x + map.xy * y + map.offsetX)
      const sy = Math.round(map.yx * x + map.yy * y + map.offsetY)
      const to = (y * width + x) * 4
      pixels[to + 3] = 255
      if (!isOpen(map, x, y) || sx < 0 || sy < 0 || sx >= width || sy >= height) continue
      const from = (sy * width + sx) * 3
      const r = at(tables[0], at(rgb, from))
      const g = at(tables[1], at(rgb, from + 1))
      const b = at(tables[2], at(rgb, from + 2))
      const luma = wr * r + wg * g + wb * b
      pixels[to] = 255 * (luma + grade.saturation * (r - luma))
      pixels[to + 1] = 255 * (luma + grade.saturation * (g - luma))
      pixels[to + 2] = 255 * (luma + grade.saturation * (b - luma))
    }
  }
  return pixels
}
