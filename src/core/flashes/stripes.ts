import { evenStretches, turnsAlong } from './barTurns.ts'
import type { CellMeans } from './cellMeans.ts'
import { WAYS } from './gridLines.ts'

/** Stripes of one frame, as far as cells show them. */
export type Stripes = {
  /** The most pairs of light and dark bars one beside another. */
  readonly pairs: number
  /** What they cover, in pixels. */
  readonly area: number
  /** Which cells lie in them. */
  readonly marks: Uint8Array
}

/** The part of a stretch whose bars must go on, light as light, on the line beside it. */
const LEAST_ALIKE = 0.75

/** Cells of a line, `from` up to `end`, with bars one after another. */
type Stretch = { readonly line: Int32Array; readonly from: number; readonly end: number }

/** Finds the stretches of a way, and writes 1 into `signs` where a bar is light, −1 where dark. */
const stretchesOf = (
  figures: Float64Array,
  lines: readonly Int32Array[],
  signs: Int8Array,
  tell: (pairs: number) => void,
): readonly Stretch[] => {
  const stretches: Stretch[] = []
  for (const line of lines) {
    const { turns, isFirstUp } = turnsAlong(figures, line)
    evenStretches(turns, (first, last) => {
      tell((last - first + 2) / 2)
      const start = turns[first] as number
      const bar = Math.round(((turns[last] as number) - start) / (last - first))
      const from = Math.max(0, start - bar)
      const end = Math.min(line.length, (turns[last] as number) + bar)
      let sign = isFirstUp === (first % 2 === 0) ? -1 : 1
      let next = first
      for (let i = from; i < end; i++) {
        if (next <= last && i === turns[next]) {
          sign = -sign
          next++
        }
        signs[line[i] as number] = sign
      }
      stretches.push({ line, from, end })
    })
  }
  return stretches
}

/** Whether the bars of a stretch go on `steps` lines further, by (dx, dy) a line. */
const goesOn = (
  { line, from, end }: Stretch,
  signs: Int8Array,
  { columns, rows }: CellMeans,
  [dx, dy]: readonly [dx: number, dy: number],
  steps: number,
): boolean => {
  let alike = 0
  for (let i = from; i < end; i++) {
    const cell = line[i] as number
    const x = (cell % columns) + dx * steps
    const y = Math.floor(cell / columns) + dy * steps
    const isInside = x >= 0 && x < columns && y >= 0 && y < rows
    if (isInside && signs[y * columns + x] === signs[cell]) alike++
  }
  return alike >= LEAST_ALIKE * (end - from)
}

/**
 * Light and dark bars in any orientation, more than five pairs, the darker below 160 and the
 * difference at least 20 cd/m². Bars narrower than a cell are not seen, and those narrower than two
 * may be missed. Bars go on over three lines of cells at least: what does not is texture. `lines`
 * are `gridLines`.
 */
export const findStripes = (
  figures: Float64Array,
  cells: CellMeans,
  lines: readonly (readonly Int32Array[])[],
): Stripes => {
  const { pixels } = cells
  const marks = new Uint8Array(pixels.length)
  const signs = new Int8Array(pixels.length)
  let pairs = 0
  for (const [way, [dx, dy]] of WAYS.entries()) {
    signs.fill(0)
    let most = 0
    const stretches = stretchesOf(figures, lines[way] ?? [], signs, (found) => {
      most = Math.max(most, found)
    })
    for (const stretch of stretches) {
      const on = (steps: number) => goesOn(stretch, signs, cells, [-dy, dx], steps)
      const [before, after] = [on(-1), on(1)]
      if (!((before && after) || (before && on(-2)) || (after && on(2)))) continue
      pairs = Math.max(pairs, most)
      for (let i = stretch.from; i < stretch.end; i++) marks[stretch.line[i] as number] = 1
    }
  }
  let area = 0
  for (let cell = 0; cell < marks.length; cell++)
    if (marks[cell] === 1) area += pixels[cell] as number
  return { pairs, area, marks }
}
