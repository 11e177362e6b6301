import {
  drawLevelAxis,
  drawLevelLimits,
  drawPastColumns,
  type LevelStyle,
  levelPlot,
  placeTrace,
} from './drawLevelAxis.ts'
import type { LevelColumns } from './levelCounts.ts'
import { paintLevels } from './levelTrace.ts'

/** Draws a waveform of luma: axis, trace, tolerance, and where the signal is past the edge. */
export const drawWaveform = (
  context: CanvasRenderingContext2D,
  waveform: LevelColumns | undefined,
  style: LevelStyle,
): void => {
  const plot = levelPlot(style)
  context.clearRect(0, 0, style.width, style.height)
  drawLevelAxis(context, plot)
  if (waveform) {
    placeTrace(context, paintLevels(waveform), plot, plot.left, plot.right)
    drawPastColumns(context, waveform.counts, waveform.columns, plot, plot.left, plot.right)
  }
  drawLevelLimits(context, plot, style.limits)
}
