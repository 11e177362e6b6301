import type { Triple } from '../../../src/core/colour/triple.ts'
import type { CellMeans } from '../../../src/core/flashes/cellMeans.ts'
import { createFlashGatherer } from '../../../src/core/flashes/flashGatherer.ts'
import type { FlashReport } from '../../../src/core/flashes/flashReport.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { type Rate, rate } from '../../../src/core/time/rate.ts'

export const PAL = rate(25)

/** The signal of a pixel: `n` is the frame, x and y go from 0 to 1 across the picture and down it. */
export type Formula = (n: number, x: number, y: number) => number | Triple

/** The report on a clip made by a formula, one sample a cell. */
export const reportOf = (
  formula: Formula,
  frames: number,
  { at = PAL, width = 128, height = 72, first = 0 } = {} as {
    readonly at?: Rate
    readonly width?: number
    readonly height?: number
    readonly first?: number
  },
): FlashReport => {
  const gatherer = createFlashGatherer(width, height, at)
  for (let n = 0; n < frames; n++) {
    fillCells(gatherer.cells, (x, y) => formula(n, x, y))
    gatherer.add(frame(first + n))
  }
  const report = gatherer.report()
  if (!report) throw new Error('A clip needs a frame.')
  return report
}

export const fillCells = (
  { columns, rows, r, g, b }: CellMeans,
  colour: (x: number, y: number) => number | Triple,
): void => {
  for (let cell = 0; cell < columns * rows; cell++) {
    const value = colour((cell % columns) / columns, Math.floor(cell / columns) / rows)
    const [red, green, blue] = typeof value === 'number' ? [value, value, value] : value
    r[cell] = red
    g[cell] = green
    b[cell] = blue
  }
}

/** A picture that is dark, and light after an odd number of the changes. */
export const lightAfter =
  (changes: readonly number[], light = 0.9, dark = 0.1): Formula =>
  (n) =>
    changes.filter((change) => change <= n).length % 2 === 1 ? light : dark

/** Light for the first half of every period, rounded up; dark for the rest. */
export const flashing =
  (period: number, light = 1, dark = 0): Formula =>
  (n) =>
    n % period < period / 2 ? light : dark
