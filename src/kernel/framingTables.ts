import { at } from '../core/base/assert.ts'
import { cubicTaps, filterWidths, tapReach } from '../core/picture/cubicTaps.ts'
import type { FramingMap } from '../core/picture/framing.ts'

/** A place outside the scanned picture, or blanked. */
export const OUTSIDE = -1

/**
 * What delivered columns or rows are read from: scanned samples from `firsts` on (OUTSIDE: none),
 * each by one of `taps` weights, a multiple of 4. The ends of the scan take the weights of what
 * would be past them; what still is past them, where taps are more than samples, weighs nothing.
 */
export type Taps = {
  readonly taps: number
  readonly firsts: Int32Array
  readonly weights: Float32Array
}

/** A whole number of vectors. */
export const tapsOf = (width: number): number => Math.ceil((2 * tapReach(width)) / 4) * 4

const tapsAlong = (
  count: number,
  width: number,
  scale: number,
  offset: number,
  first: number,
  end: number,
): Taps => {
  const exact = new Float64Array(2 * tapReach(width))
  const taps = tapsOf(width)
  const span = Math.min(exact.length, count)
  const firsts = new Int32Array(count).fill(OUTSIDE)
  const weights = new Float32Array(count * taps)
  const folded = new Float64Array(taps)
  for (let i = first; i < end; i++) {
    const place = i * scale + offset
    if (!(place >= -0.5 && place <= count - 0.5)) continue
    const start = cubicTaps(place, width, exact)
    const from = Math.min(Math.max(start, 0), count - span)
    folded.fill(0)
    for (const [k, weight] of exact.entries()) {
      const to = Math.min(Math.max(start + k, 0), count - 1) - from
      folded[to] = at(folded, to) + weight
    }
    firsts[i] = from
    weights.set(folded, i * taps)
  }
  return { taps, firsts, weights }
}

/** What an upright picture's columns and rows are read from: the places of `framePicture`. */
export const framingTables = (map: FramingMap, width: number, height: number) => {
  const { xx, yy, offsetX, offsetY, open } = map
  const { across, down } = filterWidths(map)
  return {
    columns: tapsAlong(width, across, xx, offsetX, open.left, open.right),
    rows: tapsAlong(height, down, yy, offsetY, open.top, open.bottom),
  }
}
