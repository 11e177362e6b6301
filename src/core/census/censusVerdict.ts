import { at } from '../base/assert.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { Extremes } from '../tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import { boundFigures } from './boundFigures.ts'
import { type BoxLevel, BRANCH, type CensusData, LEAF } from './censusData.ts'
import { isExactShape } from './censusShape.ts'
import { FIGURES } from './figureWeights.ts'
import { keyBoxes } from './keyBoxes.ts'

/** What all pixels of a cue measure under a grade, before any filter. */
export type CensusVerdict = {
  readonly r: Extremes
  readonly g: Extremes
  readonly b: Extremes
  readonly y: Extremes
  /** Pixels outside: the same number twice, unless the census was made coarser. */
  readonly outsideAtLeast: number
  readonly outsideAtMost: number
  readonly pixels: number
}

export type CensusReader = {
  readonly verdict: (grade: Grade, profile: ToleranceProfile) => CensusVerdict
}

/** Whether no figure, all of them, or at least one surely is outside its limits. */
const INSIDE = 0
const STRADDLING = 1
const OUTSIDE = 2

/**
 * Reads verdicts from a census: exact extremes and count where the census is exact. Where it is
 * not, the count is bounded and the extremes are those of the boxes (not less than the true ones).
 * The grade is monotone in each channel and saturation and luma are sums, so a box of colours that
 * is wholly inside or outside is settled at once, and only the colours of others are looked at.
 */
export const createCensusReader = (census: CensusData): CensusReader => {
  const { boxes: over, levels, keys, counts, shape, coding } = census
  const { matrix } = coding
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const boxOf = keyBoxes(shape, coding)
  const isExact = isExactShape(shape)
  const perKey = isExact ? 3 : 6
  const exact = new Float64Array(FIGURES)
  const top = over.length - 1
  const range = over[top]?.boxes ?? new Float32Array(6)

  /** The figures of colour `i` as the reference has them, to the last bit. */
  const evaluate = (i: number, grade: Grade): void => {
    const [r, g, b] = gradeColour(boxOf(at(keys, i)).low, grade)
    exact[0] = r
    exact[1] = g
    exact[2] = b
    exact[3] = kr * r + kg * g + kb * b
  }

  const verdict = (grade: Grade, profile: ToleranceProfile): CensusVerdict => {
    const { least, most, ofColour, ofBox } = boundFigures(grade, matrix, range)
    const boundKey = isExact ? ofColour : ofBox
    const lows = [profile.rgb[0], profile.rgb[0], profile.rgb[0], profile.luma[0]]
    const highs = [profile.rgb[1], profile.rgb[1], profile.rgb[1], profile.luma[1]]
    const settle = (low: ArrayLike<number>, high: ArrayLike<number>): number => {
      let result = INSIDE
      for (let f = 0; f < FIGURES; f++) {
        const lowest = lows[f] as number
        const highest = highs[f] as number
        if ((high[f] as number) < lowest || (low[f] as number) > highest) return OUTSIDE
        if ((low[f] as number) < lowest || (high[f] as number) > highest) result = STRADDLING
      }
      return result
    }
    let atLeast = 0
    let atMost = 0
    const countColours = (first: number, end: number): void => {
      for (let i = first; i < end; i++) {
        boundKey(levels, i * perKey)
        let settled = settle(least, most)
        if (settled === STRADDLING && isExact) {
          evaluate(i, grade)
          settled = settle(exact, exact)
        }
        if (settled === INSIDE) continue
        const pixels = counts[i] as number
        atMost += pixels
        if (settled === OUTSIDE) atLeast += pixels
      }
    }
    const count = (level: number, first: number, end: number): void => {
      const { boxes, pixels } = over[level] as BoxLevel
      for (let i = first; i < end; i++) {
        ofBox(boxes, i * 6)
        const settled = settle(least, most)
        if (settled === INSIDE) continue
        if (settled === OUTSIDE) {
          atLeast += pixels[i] as number
          atMost += pixels[i] as number
        } else if (level === 0) countColours(i * LEAF, Math.min((i + 1) * LEAF, keys.length))
        else {
          const below = (over[level - 1] as BoxLevel).pixels.length
          count(level - 1, i * BRANCH, Math.min((i + 1) * BRANCH, below))
        }
      }
    }
    count(top, 0, over[top]?.pixels.length ?? 0)

    /** The lowest of a figure (`sign` 1), or less the highest (−1). */
    const extreme = (f: number, sign: 1 | -1): number => {
      let best = Infinity
      const lowOf = (): number => (sign === 1 ? (least[f] as number) : -(most[f] as number))
      const searchColours = (first: number, end: number): void => {
        for (let i = first; i < end; i++) {
          boundKey(levels, i * perKey)
          const low = lowOf()
          if (low >= best) continue
          if (isExact) {
            evaluate(i, grade)
            best = Math.min(best, sign * (exact[f] as number))
          } else best = low
        }
      }
      const search = (level: number, first: number, end: number): void => {
        const { boxes } = over[level] as BoxLevel
        const lowest = new Float64Array(end - first)
        for (let i = first; i < end; i++) {
          ofBox(boxes, i * 6)
          lowest[i - first] = lowOf()
        }
        // The most promising first: what it holds rules out most of the others.
        for (let left = end - first; left > 0; left--) {
          let next = 0
          for (let i = 1; i < lowest.length; i++)
            if ((lowest[i] as number) < (lowest[next] as number)) next = i
          if ((lowest[next] as number) >= best) return
          lowest[next] = Infinity
          const place = first + next
          if (level === 0) searchColours(place * LEAF, Math.min((place + 1) * LEAF, keys.length))
          else {
            const below = (over[level - 1] as BoxLevel).pixels.length
            search(level - 1, place * BRANCH, Math.min((place + 1) * BRANCH, below))
          }
        }
      }
      search(top, 0, over[top]?.pixels.length ?? 0)
      return sign * best
    }
    const extremes = (f: number): Extremes => ({ low: extreme(f, 1), high: extreme(f, -1) })
    return {
      r: extremes(0),
      g: extremes(1),
      b: extremes(2),
      y: extremes(3),
      outsideAtLeast: atLeast,
      outsideAtMost: atMost,
      pixels: census.pixels,
    }
  }
  return { verdict }
}
