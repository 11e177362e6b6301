import { at } from '../base/assert.ts'
import { chromaHeight, chromaWidth, type Planes, type RangeName } from '../picture/planes.ts'
import type { ColourTally } from './censusData.ts'
import { type CensusShape, coarserKey, coarserShape, finestShape, keyOf } from './censusShape.ts'
import type { Span } from './seenSpans.ts'

/** How many distinct colours a census may hold; past it colours are told apart less finely. */
export const MOST_COLOURS = 450_000

/**
 * Counts colours of pictures of one kind: the reference that the kernel's tally is held to. When
 * there are more than `most`, the shape is made coarser until there are not.
 */
export const createColourTally = (range: RangeName, most = MOST_COLOURS) => {
  let shape: CensusShape | undefined
  let counts = new Map<number, number>()
  const shrink = (from: CensusShape): CensusShape => {
    let current = from
    while (counts.size > most) {
      const to = coarserShape(current)
      const merged = new Map<number, number>()
      for (const [key, count] of counts) {
        const next = coarserKey(current, to, key)
        merged.set(next, (merged.get(next) ?? 0) + count)
      }
      counts = merged
      current = to
    }
    return current
  }
  /** `spans`: for each row, the columns that count. */
  const add = (planes: Planes, spans: readonly Span[]): void => {
    const { layout, depth, width, height, samples } = planes
    let current = shape ?? finestShape(layout, depth, range)
    const chroma = partsOfChroma(planes)
    for (let y = 0; y < height; y++) {
      const { first, end } = at(spans, y)
      for (let x = first; x < end; x++) {
        const key = keyOf(current, at(samples[0], y * width + x), chroma(1, x, y), chroma(2, x, y))
        counts.set(key, (counts.get(key) ?? 0) + 1)
      }
      current = shrink(current)
    }
    shape = current
  }
  const tally = (): ColourTally | undefined =>
    shape && {
      shape,
      keys: Uint32Array.from(counts.keys()),
      counts: Uint32Array.from(counts.values()),
    }
  return { add, tally }
}

/** A chroma plane (or G′, B′) at a pixel, in the parts of a code that `CensusShape` counts. */
const partsOfChroma = ({ layout, width, height, samples }: Planes) => {
  const columns = chromaWidth(layout, width)
  const rows = chromaHeight(layout, height)
  return (plane: 1 | 2, x: number, y: number): number => {
    const code = (column: number, row: number) => at(samples[plane], row * columns + column)
    if (layout === '444' || layout === 'rgb') return code(x, y)
    const left = x >> 1
    const right = x % 2 === 0 ? left : Math.min(left + 1, columns - 1)
    const pair = (row: number) => code(left, row) + code(right, row)
    if (layout === '422') return pair(y)
    const near = y >> 1
    const far = Math.min(Math.max(near + (y % 2 === 0 ? -1 : 1), 0), rows - 1)
    return 3 * pair(near) + pair(far)
  }
}
