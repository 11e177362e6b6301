import type { FigureBounds } from './boundFigures.ts'
import { type BoxLevel, BRANCH, type CensusData, LEAF } from './censusData.ts'
import { isExactShape } from './censusShape.ts'

/**
 * The lowest (`sign` 1) or highest (−1) of a figure over a census: exact by `evaluate` (the figure
 * of a colour by its place) where keys are single colours, and else the end of the farthest box.
 */
export const findExtreme = (
  { boxes: over, levels, keys, shape }: CensusData,
  { least, most, ofColour, ofBox }: FigureBounds,
  figure: number,
  sign: 1 | -1,
  evaluate: (place: number) => number,
): number => {
  const isExact = isExactShape(shape)
  const boundKey = isExact ? ofColour : ofBox
  const perKey = isExact ? 3 : 6
  let best = Infinity
  const lowest = (): number => (sign === 1 ? (least[figure] as number) : -(most[figure] as number))
  const searchColours = (first: number, end: number): void => {
    for (let i = first; i < end; i++) {
      boundKey(levels, i * perKey)
      const low = lowest()
      if (low < best) best = isExact ? Math.min(best, sign * evaluate(i)) : low
    }
  }
  const search = (level: number, first: number, end: number): void => {
    const { boxes } = over[level] as BoxLevel
    const lows = new Float64Array(end - first)
    for (let i = first; i < end; i++) {
      ofBox(boxes, i * 6)
      lows[i - first] = lowest()
    }
    // The most promising first: what it holds rules out most of the others.
    for (let left = end - first; left > 0; left--) {
      let next = 0
      for (let i = 1; i < lows.length; i++)
        if ((lows[i] as number) < (lows[next] as number)) next = i
      if ((lows[next] as number) >= best) return
      lows[next] = Infinity
      const place = first + next
      if (level === 0) searchColours(place * LEAF, Math.min((place + 1) * LEAF, keys.length))
      else {
        const below = (over[level - 1] as BoxLevel).pixels.length
        search(level - 1, place * BRANCH, Math.min((place + 1) * BRANCH, below))
      }
    }
  }
  const top = over.length - 1
  search(top, 0, over[top]?.pixels.length ?? 0)
  return sign * best
}
