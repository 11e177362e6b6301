import { at } from '../core/base/assert.ts'
import { mostOf, traceBitmap } from './traceBitmap.ts'
import {
  WAVEFORM_HIGH,
  WAVEFORM_LINES,
  WAVEFORM_LOW,
  waveformBinLevel,
  waveformY,
} from './waveformScale.ts'

export type WaveformCounts = {
  /** 256 luma bins for each column, column after column. */
  readonly counts: Uint32Array
  readonly columns: number
}

export type WaveformStyle = {
  readonly width: number
  readonly height: number
  /** Levels drawn as broken lines: the tolerance. */
  readonly limits: readonly [low: number, high: number]
}

const BINS = 256
const LEFT = 30
const RIGHT = 36

/** Rows of the trace bitmap: bins inside the span shown, top first. */
const shownBins = (): readonly number[] =>
  Array.from({ length: BINS }, (_, i) => BINS - 1 - i).filter((bin) => {
    const level = waveformBinLevel(bin)
    return level >= WAVEFORM_LOW && level <= WAVEFORM_HIGH
  })

const ROWS = shownBins()

const trace = ({ counts, columns }: WaveformCounts): OffscreenCanvas =>
  traceBitmap(
    columns,
    ROWS.length,
    (column, row) => at(counts, column * BINS + at(ROWS, row)),
    mostOf(counts) / 3,
  )

const line = (context: CanvasRenderingContext2D, y: number, from: number, to: number): void => {
  context.beginPath()
  context.moveTo(from, Math.round(y) + 0.5)
  context.lineTo(to, Math.round(y) + 0.5)
  context.stroke()
}

/** Draws a luma waveform in CSS pixels: trace, scale in percent and millivolts, tolerance. */
export const drawWaveform = (
  context: CanvasRenderingContext2D,
  waveform: WaveformCounts | undefined,
  { width, height, limits }: WaveformStyle,
): void => {
  context.clearRect(0, 0, width, height)
  const right = width - RIGHT
  context.font = '10px "Inter Variable", sans-serif'
  context.textBaseline = 'middle'
  context.lineWidth = 1
  for (const level of WAVEFORM_LINES) {
    const y = waveformY(level, height)
    context.strokeStyle = level === 0 || level === 1 ? '#5c5c5c' : '#3a3a3a'
    line(context, y, LEFT, right)
    context.fillStyle = '#a3a3a3'
    context.textAlign = 'right'
    context.fillText(String(level * 100), LEFT - 5, y)
    context.textAlign = 'left'
    context.fillText(String(level * 700), right + 5, y)
  }
  if (waveform) {
    const top = waveformY(waveformBinLevel(at(ROWS, 0)) + 2 / 876, height)
    const bottom = waveformY(waveformBinLevel(at(ROWS, ROWS.length - 1)) - 2 / 876, height)
    context.imageSmoothingEnabled = true
    context.globalCompositeOperation = 'lighten'
    context.drawImage(trace(waveform), LEFT, top, right - LEFT, bottom - top)
    context.globalCompositeOperation = 'source-over'
  }
  context.strokeStyle = '#d0d0d0'
  context.setLineDash([4, 4])
  for (const limit of limits) line(context, waveformY(limit, height), LEFT, right)
  context.setLineDash([])
}
