import { scaleSqrt } from 'd3-scale'
import { at } from '../core/base/assert.ts'
import { type LevelUnit, levelInUnit } from '../core/colour/levelUnits.ts'
import type { Limits } from '../core/tolerance/profile.ts'
import {
  BRIGHT_CSS,
  CHANNEL_CSS,
  INSTRUMENT_FONT,
  LIMIT_CSS,
  LINE_CSS,
  MAIN_LINE_CSS,
  TEXT_CSS,
} from './instrumentInks.ts'
import { FIRST_LEVEL, LAST_LEVEL, LEVELS, levelEdge } from './levelCounts.ts'
import { type LevelScale, levelScale, levelTicks, tickText } from './levelScale.ts'

/** How many pixels have each of 256 levels, in R′, G′, B′ and Y′. */
export type LevelHistograms = Readonly<Record<'r' | 'g' | 'b' | 'y', Uint32Array>>

export type HistogramStyle = {
  readonly width: number
  readonly height: number
  readonly unit: LevelUnit
  readonly luma: Limits
  readonly rgb: Limits | null
}

/** One histogram, or several over each other, and where it stands. */
type Row = {
  readonly name: string
  readonly top: number
  readonly bottom: number
  readonly limits: Limits | null
  readonly counts: readonly { readonly of: Uint32Array; readonly css: string }[]
}

const LEFT = 40
const RIGHT = 14
const FOOT = 15
const HEAD = 12
const GAP = 14
const APART = 40
const EDGE_MARK = 3
const LUMA_CSS = '#b9b9b9'

/**
 * The count that fills a row: the largest, but one level that most of a picture lies on (blanking)
 * does not press the others flat.
 */
const fullCount = (rows: readonly Uint32Array[]): number => {
  const sorted = rows.flatMap((counts) => [...counts]).sort((a, b) => b - a)
  const third = sorted[2 * rows.length] ?? 0
  return Math.max(1, Math.min(sorted[0] ?? 0, third * 1.6))
}

const drawCounts = (
  context: CanvasRenderingContext2D,
  { top, bottom, counts }: Row,
  { place }: LevelScale,
  right: number,
): void => {
  const height = scaleSqrt()
    .domain([0, fullCount(counts.map(({ of }) => of))])
    .range([0, bottom - top])
    .clamp(true)
  context.globalCompositeOperation = 'screen'
  for (const { of, css } of counts) {
    context.beginPath()
    context.moveTo(place(levelEdge(FIRST_LEVEL)), bottom)
    for (let level = FIRST_LEVEL; level <= LAST_LEVEL; level++) {
      const y = bottom - height(at(of, level))
      context.lineTo(place(levelEdge(level)), y)
      context.lineTo(place(levelEdge(level + 1)), y)
    }
    context.lineTo(place(levelEdge(LAST_LEVEL + 1)), bottom)
    context.fillStyle = css
    context.strokeStyle = css
    context.globalAlpha = 0.3
    context.fill()
    context.globalAlpha = 1
    context.stroke()
  }
  context.globalCompositeOperation = 'source-over'
  context.fillStyle = BRIGHT_CSS
  for (const { of } of counts) {
    const [under, over] = [height(at(of, 0)), height(at(of, LEVELS - 1))]
    if (under > 0)
      context.fillRect(LEFT, bottom - Math.max(2, under), EDGE_MARK, Math.max(2, under))
    if (over > 0)
      context.fillRect(right - EDGE_MARK, bottom - Math.max(2, over), EDGE_MARK, Math.max(2, over))
  }
}

const upright = (context: CanvasRenderingContext2D, x: number, top: number, bottom: number) => {
  context.beginPath()
  context.moveTo(Math.round(x) + 0.5, top)
  context.lineTo(Math.round(x) + 0.5, bottom)
  context.stroke()
}

/**
 * Draws how much of the picture has each level: Y′ above, R′, G′ and B′ over each other below.
 * Heights go by the square root, so that small parts are seen.
 */
export const drawHistogram = (
  context: CanvasRenderingContext2D,
  histograms: LevelHistograms | undefined,
  { width, height, unit, luma, rgb }: HistogramStyle,
): void => {
  const right = Math.max(LEFT + 1, width - RIGHT)
  const levels = levelScale(unit, LEFT, right)
  const tall = (height - HEAD - GAP - FOOT) / 2
  const [r, g, b] = CHANNEL_CSS
  const rows: readonly Row[] = [
    {
      name: 'Y′',
      top: HEAD,
      bottom: HEAD + tall,
      limits: luma,
      counts: histograms ? [{ of: histograms.y, css: LUMA_CSS }] : [],
    },
    {
      name: 'R′G′B′',
      top: HEAD + tall + GAP,
      bottom: HEAD + tall + GAP + tall,
      limits: rgb,
      counts: histograms
        ? [
            { of: histograms.r, css: r },
            { of: histograms.g, css: g },
            { of: histograms.b, css: b },
          ]
        : [],
    },
  ]
  context.clearRect(0, 0, width, height)
  context.font = INSTRUMENT_FONT
  context.lineWidth = 1
  const main = [levelInUnit(0, unit), levelInUnit(1, unit)]
  for (const row of rows) {
    for (const tick of levelTicks(levels, APART)) {
      context.strokeStyle = main.includes(tick) ? MAIN_LINE_CSS : LINE_CSS
      upright(context, levels.scale(tick), row.top, row.bottom)
    }
    context.strokeStyle = MAIN_LINE_CSS
    context.beginPath()
    context.moveTo(LEFT, Math.round(row.bottom) + 0.5)
    context.lineTo(right, Math.round(row.bottom) + 0.5)
    context.stroke()
    if (row.counts.length > 0) drawCounts(context, row, levels, right)
    context.fillStyle = TEXT_CSS
    context.textAlign = 'right'
    context.textBaseline = 'bottom'
    context.fillText(row.name, LEFT - 6, row.bottom)
    context.strokeStyle = LIMIT_CSS
    context.fillStyle = LIMIT_CSS
    context.textAlign = 'center'
    for (const limit of row.limits ?? []) {
      context.setLineDash([4, 4])
      upright(context, levels.place(limit), row.top, row.bottom)
      context.setLineDash([])
      const text = tickText(levelInUnit(limit, unit), unit)
      context.fillText(text, levels.place(limit), row.top - 1)
    }
  }
  context.fillStyle = TEXT_CSS
  context.textBaseline = 'top'
  for (const tick of levelTicks(levels, APART))
    context.fillText(tickText(tick, unit), levels.scale(tick), height - FOOT + 4)
}
