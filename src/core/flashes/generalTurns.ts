import { FIGURES, LUMINANCES } from './cellFigures.ts'
import { isGeneralChange } from './generalChange.ts'

/** For each cell: 1 where it has just made a change upwards, −1 downwards, else 0. */
export type Turns = Int8Array

/**
 * Follows the luminance of `count` cells: a cell turns when it has changed, against the direction of
 * its last change, from the extreme met since; the change may have taken several frames. Whichever
 * way of counting luminance shows it first counts.
 */
export const createGeneralTurns = (count: number) => {
  const lows = new Float64Array(count * LUMINANCES).fill(Infinity)
  const highs = new Float64Array(count * LUMINANCES).fill(-Infinity)
  const turns = new Int8Array(count)
  const last = new Int8Array(count)
  const begin = (cell: number, figures: Float64Array): void => {
    for (let way = 0; way < LUMINANCES; way++) {
      const now = figures[cell * FIGURES + way] as number
      lows[cell * LUMINANCES + way] = now
      highs[cell * LUMINANCES + way] = now
    }
  }
  return (figures: Float64Array): Turns => {
    for (let cell = 0; cell < count; cell++) {
      let isUp = false
      let isDown = false
      for (let way = 0; way < LUMINANCES; way++) {
        const now = figures[cell * FIGURES + way] as number
        const i = cell * LUMINANCES + way
        if (now < (lows[i] as number)) lows[i] = now
        if (now > (highs[i] as number)) highs[i] = now
        isUp ||= isGeneralChange(lows[i] as number, now)
        isDown ||= isGeneralChange(now, highs[i] as number)
      }
      const before = last[cell] as number
      const turn = isUp && before !== 1 ? 1 : isDown && before !== -1 ? -1 : 0
      turns[cell] = turn
      if (turn !== 0) {
        last[cell] = turn
        begin(cell, figures)
      }
    }
    return turns
  }
}
