import { at } from '../base/assert.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import { compositePeaks } from '../tolerance/compositePeaks.ts'
import type { Extremes } from '../tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import type { CensusData } from './censusData.ts'
import { censusQuestion, settleFigures } from './censusQuestion.ts'
import { isExactShape } from './censusShape.ts'
import { createOutsideCounter, type OutsideCounter } from './countOutside.ts'
import { createEndsFinder, type EndsFinder } from './findEnds.ts'
import { keyBoxes } from './keyBoxes.ts'

/** What all pixels of a cue measure under a grade, before any filter. */
export type CensusVerdict = {
  readonly r: Extremes
  readonly g: Extremes
  readonly b: Extremes
  readonly y: Extremes
  /** Lowest and highest peaks of the composite signal, where the profile limits them. */
  readonly composite?: Extremes
  /** Pixels outside: the same number twice, unless the census was made coarser. */
  readonly outsideAtLeast: number
  readonly outsideAtMost: number
  readonly pixels: number
}

/** Tells what a cue measures under any grade. */
export type CensusReader = (grade: Grade, profile: ToleranceProfile) => CensusVerdict

/** What a census is asked for a verdict. */
export type CensusQueries = {
  readonly countOutside: OutsideCounter
  readonly findEnds: EndsFinder
}

const referenceQueries = (census: CensusData): CensusQueries => ({
  countOutside: createOutsideCounter(census),
  findEnds: createEndsFinder(census),
})

/**
 * Reads verdicts from a census: exact extremes and count where the census is exact. Where it is
 * not, the count is bounded and the extremes are those of the boxes (not less than the true ones).
 * The grade is monotone in each channel and saturation and luma are sums, so a box of colours that
 * is wholly inside or outside is settled at once, and only the colours of others are looked at.
 * `queries` may be faster ones of the same census.
 */
export const createCensusReader = (
  census: CensusData,
  { countOutside, findEnds }: CensusQueries = referenceQueries(census),
): CensusReader => {
  const { boxes, keys, counts, shape, coding } = census
  const [kr, kg, kb] = LUMA_WEIGHTS[coding.matrix]
  const boxOf = keyBoxes(shape, coding)
  const isExact = isExactShape(shape)
  const range = boxes.at(-1)?.boxes ?? new Float32Array(6)
  const figures = new Float64Array(6)

  return (grade, profile) => {
    const question = censusQuestion(grade, coding.matrix, profile, range)
    /** The figures of a colour as the reference has them, to the last bit. */
    const evaluate = (place: number): Float64Array => {
      const [r, g, b] = gradeColour(boxOf(at(keys, place)).low, grade)
      figures[0] = r
      figures[1] = g
      figures[2] = b
      figures[3] = kr * r + kg * g + kb * b
      if (question.hasComposite) figures.set(compositePeaks(r, g, b), 4)
      return figures
    }
    const count = countOutside(question)
    let near = 0
    for (let i = 0; i < count.open.length; i++) {
      const place = at(count.open, i)
      const exact = evaluate(place)
      if (settleFigures(exact, exact, question) === 'outside') near += at(counts, place)
    }
    const ends = findEnds(question)
    const lows = isExact ? new Float64Array(6).fill(Infinity) : Float64Array.from(ends.lows)
    const highs = isExact ? new Float64Array(6).fill(-Infinity) : Float64Array.from(ends.highs)
    for (let i = 0; i < ends.open.length; i++) {
      const exact = evaluate(at(ends.open, i))
      for (let f = 0; f < exact.length; f++) {
        lows[f] = Math.min(at(lows, f), at(exact, f))
        highs[f] = Math.max(at(highs, f), at(exact, f))
      }
    }
    const extremes = (low: number, high: number): Extremes => ({
      low: at(lows, low),
      high: at(highs, high),
    })
    return {
      r: extremes(0, 0),
      g: extremes(1, 1),
      b: extremes(2, 2),
      y: extremes(3, 3),
      ...(question.hasComposite && { composite: extremes(4, 5) }),
      outsideAtLeast: count.atLeast + near,
      outsideAtMost: count.atMost + near,
      pixels: census.pixels,
    }
  }
}
