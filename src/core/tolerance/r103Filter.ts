import { at } from '../base/assert.ts'

/** Horizontal quarter-band taps in sixteenths: EBU R 103 v3, "Video Signal Filtering". */
export const HORIZONTAL_TAPS = [1, 2, 3, 4, 3, 2, 1] as const

/** Vertical half-band taps in quarters: EBU R 103 v3, "Video Signal Filtering". */
export const VERTICAL_TAPS = [1, 2, 1] as const

const clampIndex = (index: number, count: number): number => Math.min(Math.max(index, 0), count - 1)

/**
 * One plane of width·height samples through the low-pass filter of EBU R 103 v3. The text seen
 * states no edge handling: edge samples are repeated. For progressive pictures.
 */
export const r103Filter = (plane: Float64Array, width: number, height: number): Float64Array => {
  const rows = new Float64Array(plane.length)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let sum = 0
      for (let t = -3; t <= 3; t++)
        sum += at(HORIZONTAL_TAPS, t + 3) * at(plane, y * width + clampIndex(x + t, width))
      rows[y * width + x] = sum / 16
    }
  }
  const out = new Float64Array(plane.length)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let sum = 0
      for (let t = -1; t <= 1; t++)
        sum += at(VERTICAL_TAPS, t + 1) * at(rows, clampIndex(y + t, height) * width + x)
      out[y * width + x] = sum / 4
    }
  }
  return out
}
