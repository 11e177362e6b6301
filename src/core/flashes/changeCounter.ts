import type { Rate } from '../time/rate.ts'
import { allowedSpacing, framesWithinSecond, isTooLarge, MOST_CHANGES } from './flashLimits.ts'
import type { Turns } from './generalTurns.ts'

/** What the cells' changes come to on one frame. Areas are pixels. */
export type CellTally = {
  /** What changes upwards, or to red, on this frame, and what the other way. */
  readonly up: number
  readonly down: number
  /** The most changes within the last second that more than a quarter of the picture has made. */
  readonly changes: number
  /** What has made more than are allowed. */
  readonly over: number
}

/** Changes of a cell that are remembered: as many as decide whether they are too many. */
const KEPT = MOST_CHANGES + 2

/**
 * Counts each cell's changes within the second that ends with a frame. `pixels` are the cells'
 * areas; frames come one by one. What a cell has made of seven changes does not count as too many
 * where its leading edges are as far apart as is always allowed.
 */
export const createChangeCounter = (pixels: Int32Array, rate: Rate) => {
  const size = framesWithinSecond(rate)
  const spacing = allowedSpacing(rate)
  const whole = pixels.reduce((sum, area) => sum + area, 0)
  const counts = new Uint16Array(pixels.length)
  const isSpaced = new Uint8Array(pixels.length)
  const heads = new Uint8Array(pixels.length)
  const times = new Int32Array(pixels.length * KEPT)
  /** The area of the cells that have made each number of changes, and what of it is spaced. */
  const areas = new Float64Array(size + 1)
  let spacedArea = 0
  /** The cells that changed on each of the last frames. */
  const changed: Uint16Array[] = Array.from({ length: size }, () => new Uint16Array(0))
  const room = new Uint16Array(pixels.length)

  /** When a cell made its `n`th last change; the last is 0. */
  const timeOf = (cell: number, n: number): number =>
    times[cell * KEPT + (((heads[cell] as number) + KEPT - 1 - n) % KEPT)] as number

  const areEdgesSpaced = (cell: number): boolean => {
    for (let n = 1; n + 2 < MOST_CHANGES; n += 2)
      if (timeOf(cell, n) - timeOf(cell, n + 2) < spacing) return false
    return true
  }
  const setCount = (cell: number, count: number): void => {
    const area = pixels[cell] as number
    const before = counts[cell] as number
    areas[before] = (areas[before] as number) - area
    areas[count] = (areas[count] as number) + area
    counts[cell] = count
    const spaced = count === MOST_CHANGES + 1 && areEdgesSpaced(cell)
    spacedArea += (Number(spaced) - (isSpaced[cell] as number)) * area
    isSpaced[cell] = Number(spaced)
  }
  /** The area that has made `least` changes or more. */
  const areaFrom = (least: number): number => {
    let area = least === MOST_CHANGES + 1 ? -spacedArea : 0
    for (let count = least; count <= size; count++) area += areas[count] as number
    return area
  }
  areas[0] = whole

  return {
    /** How many changes each cell has made within the last second. */
    counts,
    add: (frame: number, turns: Turns): CellTally => {
      const slot = frame % size
      for (const cell of changed[slot] as Uint16Array) setCount(cell, (counts[cell] as number) - 1)
      let up = 0
      let down = 0
      let count = 0
      for (let cell = 0; cell < turns.length; cell++) {
        const turn = turns[cell]
        if (turn === 0) continue
        if (turn === 1) up += pixels[cell] as number
        else down += pixels[cell] as number
        times[cell * KEPT + (heads[cell] as number)] = frame
        heads[cell] = ((heads[cell] as number) + 1) % KEPT
        setCount(cell, (counts[cell] as number) + 1)
        room[count++] = cell
      }
      changed[slot] = room.slice(0, count)
      let changes = size
      while (changes > 0 && !isTooLarge(areaFrom(changes), whole)) changes--
      return { up, down, changes, over: areaFrom(MOST_CHANGES + 1) }
    },
    /** The first change of those within a second that are too many, over all cells. */
    since: (frame: number): number => {
      let first = frame
      for (let cell = 0; cell < counts.length; cell++)
        if ((counts[cell] as number) > MOST_CHANGES && isSpaced[cell] === 0)
          first = Math.min(first, timeOf(cell, MOST_CHANGES))
      return first
    },
  }
}
