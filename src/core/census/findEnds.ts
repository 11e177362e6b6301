import { boundFigures } from './boundFigures.ts'
import type { BoxLevel, CensusData } from './censusData.ts'
import type { CensusQuestion } from './censusQuestion.ts'
import { isExactShape } from './censusShape.ts'
import { walkBoxes } from './walkBoxes.ts'

/** Where the figures of a census end, in the order of `FigureBounds`. */
export type CensusEnds = {
  /** Lowest and highest of each figure, where keys are boxes: the farthest ends of boxes. */
  readonly lows: ArrayLike<number>
  readonly highs: ArrayLike<number>
  /** Places of the colours among which the lowest and highest are, where keys are single colours. */
  readonly open: ArrayLike<number>
}

/** Finds the ends of the figures of a census. */
export type EndsFinder = (question: CensusQuestion) => CensusEnds

/** The reference of finding: a box no part of which is past what was found is left alone. */
export const createEndsFinder = (census: CensusData): EndsFinder => {
  const { levels } = census
  const isExact = isExactShape(census.shape)
  const perKey = isExact ? 3 : 6
  return (question) => {
    const { least, most, ofColour, ofBox } = boundFigures(question)
    const boundKey = isExact ? ofColour : ofBox
    const figures = question.hasComposite ? 6 : 4
    const lows = new Float64Array(figures).fill(Infinity)
    const highs = new Float64Array(figures).fill(-Infinity)
    const isPromising = (): boolean => {
      for (let f = 0; f < figures; f++) {
        const low = least[f] as number
        const high = most[f] as number
        if (low < (lows[f] as number) || high > (highs[f] as number)) return true
        if (isExact && (low === lows[f] || high === highs[f])) return true
      }
      return false
    }
    /** Of a single colour, its lowest is surely not past the high bound. */
    const hold = (): void => {
      for (let f = 0; f < figures; f++) {
        const low = (isExact ? most[f] : least[f]) as number
        const high = (isExact ? least[f] : most[f]) as number
        if (low < (lows[f] as number)) lows[f] = low
        if (high > (highs[f] as number)) highs[f] = high
      }
    }
    let open: number[] = []
    const searchKeys = (first: number, end: number): void => {
      for (let i = first; i < end; i++) {
        boundKey(levels, i * perKey)
        if (!isPromising()) continue
        hold()
        if (isExact) open.push(i)
      }
    }
    const isOpen = ({ boxes }: BoxLevel, box: number): boolean => {
      ofBox(boxes, box * 6)
      return isPromising()
    }
    walkBoxes(census, isOpen, searchKeys)
    // Now that the ends are known, few of the places are still in question.
    open = open.filter((i) => {
      boundKey(levels, i * perKey)
      return isPromising()
    })
    return { lows, highs, open }
  }
}
