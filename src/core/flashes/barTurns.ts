import { FIGURES, LUMINANCES } from './cellFigures.ts'
import { isGeneralChange } from './generalChange.ts'

/** More than five pairs (a third party's reading of ITU-R BT.1702 guideline 2): the eleventh bar. */
const LEAST_TURNS = 10

/** Whether two spacings of bars are of one pattern: cells are coarse, and bars may differ a little. */
const isRegular = (least: number, most: number): boolean => most <= 1.5 * least + 1

/** Places along a line where light follows dark or dark light, and which the first of them is. */
export type BarTurns = { readonly turns: readonly number[]; readonly isFirstUp: boolean }

/** Where along a line of cells light follows dark or dark light, from the extreme before. */
export const turnsAlong = (figures: Float64Array, line: Int32Array): BarTurns => {
  const turns: number[] = []
  let isFirstUp = false
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  let last = 0
  for (let i = 0; i < line.length; i++) {
    const first = (line[i] as number) * FIGURES
    let isUp = false
    let isDown = false
    for (let way = 0; way < LUMINANCES; way++) {
      const now = figures[first + way] as number
      if (now < (low[way] as number)) low[way] = now
      if (now > (high[way] as number)) high[way] = now
      isUp ||= isGeneralChange(low[way] as number, now)
      isDown ||= isGeneralChange(now, high[way] as number)
    }
    const turn = isUp && last !== 1 ? 1 : isDown && last !== -1 ? -1 : 0
    if (turn === 0) continue
    if (turns.length === 0) isFirstUp = turn === 1
    turns.push(i)
    last = turn
    for (let way = 0; way < LUMINANCES; way++) {
      low[way] = figures[first + way] as number
      high[way] = figures[first + way] as number
    }
  }
  return { turns, isFirstUp }
}

/** Tells `found` of every stretch of turns that are evenly spaced and enough: its first and last. */
export const evenStretches = (
  turns: readonly number[],
  found: (first: number, last: number) => void,
) => {
  let first = 0
  let least = Infinity
  let most = 0
  for (let i = 0; i <= turns.length; i++) {
    const spacing =
      i < first + 2 || i === turns.length
        ? undefined
        : (turns[i] as number) - (turns[i - 2] as number)
    const isWithin =
      i < turns.length &&
      (spacing === undefined || isRegular(Math.min(least, spacing), Math.max(most, spacing)))
    if (isWithin) {
      if (spacing !== undefined) {
        least = Math.min(least, spacing)
        most = Math.max(most, spacing)
      }
      continue
    }
    if (i - first >= LEAST_TURNS) found(first, i - 1)
    // What ends one stretch may begin the next.
    first = Math.max(first + 1, i - 1)
    least = Infinity
    most = 0
  }
}
