import { type LevelUnit, levelInUnit } from '../core/colour/levelUnits.ts'
import type { Limits } from '../core/tolerance/profile.ts'
import {
  BRIGHT_CSS,
  INSTRUMENT_FONT,
  LIMIT_CSS,
  LINE_CSS,
  MAIN_LINE_CSS,
  TEXT_CSS,
} from './instrumentInks.ts'
import { FIRST_LEVEL, LAST_LEVEL, LEVELS, levelEdge } from './levelCounts.ts'
import { type LevelScale, levelScale, levelTicks, tickText } from './levelScale.ts'

/** How an instrument of levels is drawn: its size in CSS pixels, its unit, the tolerance. */
export type LevelStyle = {
  readonly width: number
  readonly height: number
  readonly unit: LevelUnit
  /** Levels drawn as broken lines with their numbers; null where nothing is held to any. */
  readonly limits: Limits | null
}

/** Room for the numbers left and right of the traces. */
const LEFT = 32
const RIGHT = 32
/** How far apart numbers of the axis stand. */
const APART = 26
const EDGE_MARK = 3
/** Half the height of a number: nearer to the edge it would be cut. */
const HALF_TEXT = 6

/** Where traces are drawn: levels upward by `levels`, columns between `left` and `right`. */
export type LevelPlot = {
  readonly left: number
  readonly right: number
  readonly height: number
  readonly levels: LevelScale
}

export const levelPlot = ({ width, height, unit }: LevelStyle): LevelPlot => ({
  left: LEFT,
  right: Math.max(LEFT + 1, width - RIGHT),
  height,
  levels: levelScale(unit, height, 0),
})

const across = (
  context: CanvasRenderingContext2D,
  { left, right }: LevelPlot,
  place: number,
): void => {
  const y = Math.round(place) + 0.5
  context.beginPath()
  context.moveTo(left, y)
  context.lineTo(right, y)
  context.stroke()
}

/** The lines and numbers behind the traces. */
export const drawLevelAxis = (context: CanvasRenderingContext2D, plot: LevelPlot): void => {
  const { unit, scale } = plot.levels
  const main = [levelInUnit(0, unit), levelInUnit(1, unit)]
  context.font = INSTRUMENT_FONT
  context.textBaseline = 'middle'
  context.textAlign = 'right'
  context.lineWidth = 1
  context.fillStyle = TEXT_CSS
  const isWhole = (y: number): boolean => y >= HALF_TEXT && y <= plot.height - HALF_TEXT
  for (const tick of levelTicks(plot.levels, APART)) {
    if (!isWhole(scale(tick))) continue
    context.strokeStyle = main.includes(tick) ? MAIN_LINE_CSS : LINE_CSS
    across(context, plot, scale(tick))
    context.fillText(tickText(tick, unit), plot.left - 6, scale(tick))
  }
}

/** The tolerance: broken lines over the traces, and their numbers at the right. */
export const drawLevelLimits = (
  context: CanvasRenderingContext2D,
  plot: LevelPlot,
  limits: Limits | null,
): void => {
  const { unit, place } = plot.levels
  context.strokeStyle = LIMIT_CSS
  context.fillStyle = LIMIT_CSS
  context.textAlign = 'left'
  for (const limit of limits ?? []) {
    context.setLineDash([4, 4])
    across(context, plot, place(limit))
    context.setLineDash([])
    context.fillText(tickText(levelInUnit(limit, unit), unit), plot.right + 6, place(limit))
  }
}

/** Puts a trace at its levels, between two places across. */
export const placeTrace = (
  context: CanvasRenderingContext2D,
  trace: OffscreenCanvas,
  { levels }: LevelPlot,
  left: number,
  right: number,
): void => {
  const top = levels.place(levelEdge(LAST_LEVEL + 1))
  const bottom = levels.place(levelEdge(FIRST_LEVEL))
  context.imageSmoothingEnabled = true
  context.globalCompositeOperation = 'lighten'
  context.drawImage(trace, left, top, right - left, bottom - top)
  context.globalCompositeOperation = 'source-over'
}

/** Marks along the upper and the lower edge where a column holds what is past it. */
export const drawPastColumns = (
  context: CanvasRenderingContext2D,
  counts: Uint32Array,
  columns: number,
  { height }: LevelPlot,
  left: number,
  right: number,
  css: string = BRIGHT_CSS,
): void => {
  const step = (right - left) / columns
  context.fillStyle = css
  for (let column = 0; column < columns; column++) {
    const x = left + column * step
    if (counts[column * LEVELS + LEVELS - 1]) context.fillRect(x, 0, step, EDGE_MARK)
    if (counts[column * LEVELS]) context.fillRect(x, height - EDGE_MARK, step, EDGE_MARK)
  }
}
