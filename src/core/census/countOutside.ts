import { boundFigures } from './boundFigures.ts'
import type { BoxLevel, CensusData } from './censusData.ts'
import { type CensusQuestion, settleFigures } from './censusQuestion.ts'
import { isExactShape } from './censusShape.ts'
import { walkBoxes } from './walkBoxes.ts'

/** Pixels outside, and single colours too near a limit to be settled by bounds. */
export type OutsideCount = {
  readonly atLeast: number
  readonly atMost: number
  /** Places of colours that are in neither number. */
  readonly open: ArrayLike<number>
}

/** Counts the pixels of a census that are outside. */
export type OutsideCounter = (question: CensusQuestion) => OutsideCount

/** The reference of counting: a box wholly inside or outside is settled at once. */
export const createOutsideCounter = (census: CensusData): OutsideCounter => {
  const { levels, counts } = census
  const isExact = isExactShape(census.shape)
  const perKey = isExact ? 3 : 6
  return (question) => {
    const { least, most, ofColour, ofBox } = boundFigures(question)
    const boundKey = isExact ? ofColour : ofBox
    const open: number[] = []
    let atLeast = 0
    let atMost = 0
    const countColours = (first: number, end: number): void => {
      for (let i = first; i < end; i++) {
        boundKey(levels, i * perKey)
        const settled = settleFigures(least, most, question)
        if (settled === 'inside') continue
        if (settled === 'open' && isExact) {
          open.push(i)
          continue
        }
        atMost += counts[i] as number
        if (settled === 'outside') atLeast += counts[i] as number
      }
    }
    const isOpen = ({ boxes, pixels }: BoxLevel, box: number): boolean => {
      ofBox(boxes, box * 6)
      const settled = settleFigures(least, most, question)
      if (settled === 'outside') {
        atLeast += pixels[box] as number
        atMost += pixels[box] as number
      }
      return settled === 'open'
    }
    walkBoxes(census, isOpen, countColours)
    return { atLeast, atMost, open }
  }
}
