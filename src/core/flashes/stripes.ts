import { FIGURES, LUMINANCES } from './cellFigures.ts'
import type { CellMeans } from './cellMeans.ts'
import { isGeneralChange } from './generalChange.ts'

/** Stripes of one frame, as far as cells show them. */
export type Stripes = {
  /** The most pairs of light and dark bars one beside another. */
  readonly pairs: number
  /** What they cover, in pixels. */
  readonly area: number
  /** Which cells lie in them. */
  readonly marks: Uint8Array
}

/** More than five pairs (a third party's reading of ITU-R BT.1702 guideline 2): the eleventh bar. */
const LEAST_TURNS = 10

/** The ways in which bars may follow one another: across, down, and both diagonals. */
const WAYS = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
] as const

/** Whether two spacings of bars are of one pattern: cells are coarse, and bars may differ a little. */
const isRegular = (least: number, most: number): boolean => most <= 1.5 * least + 1

/** Where along a line of cells light follows dark or dark light, from the extreme before. */
const turnsAlong = (figures: Float64Array, line: Int32Array): readonly number[] => {
  const turns: number[] = []
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
    turns.push(i)
    last = turn
    for (let way = 0; way < LUMINANCES; way++) {
      low[way] = figures[first + way] as number
      high[way] = figures[first + way] as number
    }
  }
  return turns
}

/** Tells `found` of every stretch of turns that are evenly spaced and enough: its first and last. */
const evenStretches = (turns: readonly number[], found: (first: number, last: number) => void) => {
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

/** The lines of cells of a grid that run by (dx, dy). */
export const gridLines = (columns: number, rows: number): readonly (readonly Int32Array[])[] =>
  WAYS.map(([dx, dy]) => {
    const lines: Int32Array[] = []
    for (let cell = 0; cell < columns * rows; cell++) {
      const [x, y] = [cell % columns, Math.floor(cell / columns)]
      const isInside = (cx: number, cy: number) => cx >= 0 && cx < columns && cy >= 0 && cy < rows
      if (isInside(x - dx, y - dy)) continue
      const line: number[] = []
      for (let i = 0; isInside(x + i * dx, y + i * dy); i++)
        line.push((y + i * dy) * columns + x + i * dx)
      lines.push(Int32Array.from(line))
    }
    return lines
  })

/**
 * Light and dark bars in any orientation, more than five pairs, the darker below 160 and the
 * difference at least 20 cd/m². Bars narrower than a cell are not seen, and those narrower than two
 * may be missed. A line of cells counts where one beside it shows bars too. `lines` are `gridLines`.
 */
export const findStripes = (
  figures: Float64Array,
  { columns, rows }: CellMeans,
  pixels: Int32Array,
  lines: readonly (readonly Int32Array[])[],
): Stripes => {
  const marks = new Uint8Array(columns * rows)
  let pairs = 0
  for (const [way, [, dy]] of WAYS.entries()) {
    const striped = new Uint8Array(columns * rows)
    for (const line of lines[way] ?? []) {
      const turns = turnsAlong(figures, line)
      evenStretches(turns, (first, last) => {
        pairs = Math.max(pairs, (last - first + 2) / 2)
        const bar = Math.round(
          ((turns[last] as number) - (turns[first] as number)) / (last - first),
        )
        const end = Math.min(line.length, (turns[last] as number) + bar)
        for (let i = Math.max(0, (turns[first] as number) - bar); i < end; i++)
          striped[line[i] as number] = 1
      })
    }
    // The neighbour across the line; beside a diagonal the next along the row.
    const [sx, sy] = dy === 0 ? [0, 1] : [1, 0]
    for (let y = 0; y < rows; y++)
      for (let x = 0; x < columns; x++) {
        const cell = y * columns + x
        if (striped[cell] === 0) continue
        const before = x - sx >= 0 && y - sy >= 0 && striped[cell - sy * columns - sx] === 1
        const after = x + sx < columns && y + sy < rows && striped[cell + sy * columns + sx] === 1
        if (before || after) marks[cell] = 1
      }
  }
  let area = 0
  for (let cell = 0; cell < marks.length; cell++)
    if (marks[cell] === 1) area += pixels[cell] as number
  return { pairs: area > 0 ? pairs : 0, area, marks }
}
