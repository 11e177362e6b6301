import { scaleLinear } from 'd3-scale'
import { MOST_CHANGES } from '../../core/flashes/flashLimits.ts'
import type { FlashReport, FlashSeries } from '../../core/flashes/flashReport.ts'

/** The plot's own units; it is drawn as wide as there is room. */
export const PLOT = { width: 960, height: 232, left: 40, right: 952 } as const

/** The two bands: parts of the area that change, and changes within a second; and room for signs. */
export const AREA_BAND = { top: 48, bottom: 136 } as const
export const COUNT_BAND = { top: 148, bottom: 216 } as const

/** The line on which breaches of each kind are named, above the bands. */
export const NAME_LINES = { general: 12, red: 26, stripes: 40 } as const

/** The fewest changes the lower band has room for: the limit and some past it. */
const LEAST_COUNTS = 12

type Scale = (value: number) => number

export type FlashScales = ReturnType<typeof flashScales>

/** Where frames, parts of the area (up above the middle, down below it) and counts lie. */
export const flashScales = ({ first, frames, series }: FlashReport) => {
  const most = Math.max(series.changes.reduce(larger, 0), series.redChanges.reduce(larger, 0))
  return {
    x: scaleLinear([first, first + Math.max(1, frames)], [PLOT.left, PLOT.right]),
    area: scaleLinear([-1, 1], [AREA_BAND.bottom, AREA_BAND.top]),
    count: scaleLinear([0, Math.max(LEAST_COUNTS, most)], [COUNT_BAND.bottom, COUNT_BAND.top]),
  }
}

const larger = (a: number, b: number): number => Math.max(a, b)

/**
 * A series as steps, no more of them than can be seen: the largest of the frames that share one.
 * `sign` −1 turns it downwards. Where there is nothing nothing is drawn.
 */
export const stepPath = (
  series: FlashSeries[keyof FlashSeries],
  first: number,
  { x, y }: { readonly x: Scale; readonly y: Scale },
  sign: 1 | -1 = 1,
): string => {
  const each = Math.max(1, Math.ceil(series.length / (PLOT.right - PLOT.left)))
  const ground = y(0).toFixed(1)
  const parts = [`M${x(first).toFixed(1)} ${ground}`]
  let last = 0
  for (let from = 0; from < series.length; from += each) {
    const end = Math.min(from + each, series.length)
    let value = 0
    for (let i = from; i < end; i++) value = Math.max(value, series[i] ?? 0)
    const to = x(first + end).toFixed(1)
    const isEmpty = value === 0 && last === 0
    parts.push(isEmpty ? `M${to} ${ground}` : `V${y(sign * value).toFixed(1)}H${to}`)
    last = value
  }
  return `${parts.join('')}V${ground}`
}

/** The levels that the plot's lines mark: a quarter of the area each way, and the allowed changes. */
export const MARKED = { area: 0.25, count: MOST_CHANGES } as const
