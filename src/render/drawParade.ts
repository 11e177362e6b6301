import {
  drawLevelAxis,
  drawLevelLimits,
  drawPastColumns,
  type LevelStyle,
  levelPlot,
  placeTrace,
} from './drawLevelAxis.ts'
import { CHANNEL_CSS, CHANNEL_INKS, CHANNEL_NAMES } from './instrumentInks.ts'
import type { ChannelColumns } from './levelCounts.ts'
import { paintLevels } from './levelTrace.ts'

/** Between the waveforms of two channels. */
const GAP = 6

/** The name of a channel, on a ground of its own in the corner below the tolerance. */
const drawName = (context: CanvasRenderingContext2D, channel: 0 | 1 | 2, left: number): void => {
  context.fillStyle = '#000000a0'
  context.fillRect(left, 13, 18, 14)
  context.fillStyle = CHANNEL_CSS[channel]
  context.textAlign = 'left'
  context.fillText(CHANNEL_NAMES[channel], left + 4, 20)
}

/** Draws the waveforms of R′, G′ and B′ beside each other. */
export const drawParade = (
  context: CanvasRenderingContext2D,
  channels: ChannelColumns | undefined,
  style: LevelStyle,
): void => {
  const plot = levelPlot(style)
  const wide = (plot.right - plot.left - 2 * GAP) / 3
  context.clearRect(0, 0, style.width, style.height)
  drawLevelAxis(context, plot)
  for (const channel of [0, 1, 2] as const) {
    const left = plot.left + channel * (wide + GAP)
    const right = left + wide
    const css = CHANNEL_CSS[channel]
    if (channels) {
      const { columns } = channels
      const counts = channels.counts[channel]
      const trace = paintLevels({ counts, columns }, CHANNEL_INKS[channel])
      placeTrace(context, trace, plot, left, right)
      drawPastColumns(context, counts, columns, plot, left, right, css)
    }
  }
  drawLevelLimits(context, plot, style.limits)
  for (const channel of [0, 1, 2] as const)
    drawName(context, channel, plot.left + channel * (wide + GAP))
}
