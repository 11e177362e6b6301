import { filterWidths, tapReach } from '../picture/cubicTaps.ts'
import { type Framing, framingMap, isOnlyBlanked } from '../picture/framing.ts'

/** Columns `first` up to `end` of a row. */
export type Span = { readonly first: number; readonly end: number }

const NOTHING: Span = { first: 0, end: 0 }

/** A place is on the scan up to this far past the middles of its outermost pixels. */
const EDGE = 0.5

/**
 * The scanned pixels, row by row, that a delivered picture is made from, and none but those between
 * them. A delivered level is their sum by weights of which some are negative (`framePicture`): at a
 * hard edge it may be outside while all of theirs are inside.
 */
export const seenSpans = (
  framing: Framing,
  width: number,
  height: number,
  pixelAspect = 1,
): readonly Span[] => {
  const map = framingMap(framing, width, height, pixelAspect)
  const { xx, xy, yx, yy, offsetX, offsetY, open } = map
  if (isOnlyBlanked(framing))
    return Array.from({ length: height }, (_, row) =>
      row >= open.top && row < open.bottom ? { first: open.left, end: open.right } : NOTHING,
    )
  const widths = filterWidths(map)
  const [reachX, reachY] = [tapReach(widths.across), tapReach(widths.down)]
  const firsts = new Int32Array(height).fill(width)
  const ends = new Int32Array(height)
  const see = (row: number, from: number, to: number): void => {
    const first = Math.max(Math.floor(Math.min(from, to)) - reachX + 1, 0)
    const end = Math.min(Math.floor(Math.max(from, to)) + reachX + 1, width)
    if (first < (firsts[row] as number)) firsts[row] = first
    if (end > (ends[row] as number)) ends[row] = end
  }
  /** The part of the delivered row from `x0` to `x1` in which `slope`·x + `start` is in the scan. */
  const within = (slope: number, start: number, size: number, x0: number, x1: number) => {
    const [low, high] = [-EDGE - start, size - EDGE - start]
    if (slope === 0) return low <= 0 && high >= 0 ? ([x0, x1] as const) : undefined
    const [a, b] = slope > 0 ? [low / slope, high / slope] : [high / slope, low / slope]
    const [from, to] = [Math.max(x0, Math.ceil(a - 1e-9)), Math.min(x1, Math.floor(b + 1e-9))]
    return from <= to ? ([from, to] as const) : undefined
  }
  for (let y = open.top; y < open.bottom; y++) {
    const [startX, startY] = [xy * y + offsetX, yy * y + offsetY]
    const across = within(xx, startX, width, open.left, open.right - 1)
    const down = across && within(yx, startY, height, ...across)
    if (!down) continue
    const [x0, x1] = down
    const [rowAt0, rowAt1] = [yx * x0 + startY, yx * x1 + startY]
    const lowest = Math.max(Math.floor(Math.min(rowAt0, rowAt1)) - reachY + 1, 0)
    const highest = Math.min(Math.floor(Math.max(rowAt0, rowAt1)) + reachY, height - 1)
    for (let row = lowest; row <= highest; row++) {
      // The stretch of the line that is read from this row: nearer to it than the taps reach.
      const [a, b] =
        yx === 0
          ? [x0, x1]
          : [(row - reachY - startY) / yx, (row + reachY - startY) / yx].toSorted(ascending)
      const [from, to] = [Math.max(x0, a ?? x0), Math.min(x1, b ?? x1)]
      if (from <= to) see(row, xx * from + startX, xx * to + startX)
    }
  }
  return Array.from(firsts, (first, row) =>
    first < (ends[row] as number) ? { first, end: ends[row] as number } : NOTHING,
  )
}

const ascending = (a: number, b: number): number => a - b
