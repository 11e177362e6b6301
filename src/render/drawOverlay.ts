import {
  drawLevelAxis,
  drawLevelLimits,
  drawPastColumns,
  type LevelStyle,
  levelPlot,
  placeTrace,
} from './drawLevelAxis.ts'
import type { ChannelColumns } from './levelCounts.ts'
import { paintOverlay } from './levelTrace.ts'

/** Draws the waveforms of R′, G′ and B′ over each other. */
export const drawOverlay = (
  context: CanvasRenderingContext2D,
  channels: ChannelColumns | undefined,
  style: LevelStyle,
): void => {
  const plot = levelPlot(style)
  context.clearRect(0, 0, style.width, style.height)
  drawLevelAxis(context, plot)
  if (channels) {
    placeTrace(context, paintOverlay(channels), plot, plot.left, plot.right)
    for (const counts of channels.counts)
      drawPastColumns(context, counts, channels.columns, plot, plot.left, plot.right)
  }
  drawLevelLimits(context, plot, style.limits)
}
