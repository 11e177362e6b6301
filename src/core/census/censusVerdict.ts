import { at } from '../base/assert.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import { compositePeaks } from '../tolerance/compositePeaks.ts'
import type { Extremes } from '../tolerance/pictureLevels.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import { boundFigures } from './boundFigures.ts'
import type { CensusData } from './censusData.ts'
import { censusQuestion, settleFigures } from './censusQuestion.ts'
import { createOutsideCounter, type OutsideCounter } from './countOutside.ts'
import { findExtreme } from './findExtreme.ts'
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

/**
 * Reads verdicts from a census: exact extremes and count where the census is exact. Where it is
 * not, the count is bounded and the extremes are those of the boxes (not less than the true ones).
 * The grade is monotone in each channel and saturation and luma are sums, so a box of colours that
 * is wholly inside or outside is settled at once, and only the colours of others are looked at.
 * `countOutside` may be a faster counter of the same census.
 */
export const createCensusReader = (
  census: CensusData,
  countOutside: OutsideCounter = createOutsideCounter(census),
): CensusReader => {
  const { boxes, keys, counts, shape, coding } = census
  const [kr, kg, kb] = LUMA_WEIGHTS[coding.matrix]
  const boxOf = keyBoxes(shape, coding)
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
    const { atLeast, atMost, open } = countOutside(question)
    let near = 0
    for (let i = 0; i < open.length; i++) {
      const place = at(open, i)
      const exact = evaluate(place)
      if (settleFigures(exact, exact, question) === 'outside') near += at(counts, place)
    }
    const bounds = boundFigures(question)
    const extreme = (figure: number, sign: 1 | -1): number =>
      findExtreme(census, bounds, figure, sign, (place) => at(evaluate(place), figure))
    const extremes = (figure: number): Extremes => ({
      low: extreme(figure, 1),
      high: extreme(figure, -1),
    })
    return {
      r: extremes(0),
      g: extremes(1),
      b: extremes(2),
      y: extremes(3),
      ...(question.hasComposite && { composite: { low: extreme(4, 1), high: extreme(5, -1) } }),
      outsideAtLeast: atLeast + near,
      outsideAtMost: atMost + near,
      pixels: census.pixels,
    }
  }
}
