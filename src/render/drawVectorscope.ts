import { at } from '../core/base/assert.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import { mostOf, traceBitmap } from './traceBitmap.ts'
import { vectorscopeTargets } from './vectorscopeTargets.ts'

export type VectorscopeCounts = {
  /** Counts over Cb (left to right) and Cr (top is positive), 10-bit codes 0…1023 in size bins. */
  readonly counts: Uint32Array
  readonly size: number
}

export type VectorscopeStyle = {
  readonly width: number
  readonly height: number
  readonly matrix: MatrixName
}

/** The plane is shown a little past ±0.5, so that full colours and their names have room. */
const REACH = 0.58

const trace = ({ counts, size }: VectorscopeCounts): OffscreenCanvas =>
  traceBitmap(size, size, (x, y) => at(counts, y * size + x), mostOf(counts) / 4)

/** Draws a vectorscope in CSS pixels: trace, axes, the colours of 75 % and 100 % bars. */
export const drawVectorscope = (
  context: CanvasRenderingContext2D,
  scope: VectorscopeCounts | undefined,
  { width, height, matrix }: VectorscopeStyle,
): void => {
  context.clearRect(0, 0, width, height)
  const half = Math.min(width, height) / 2
  const x = (cb: number) => width / 2 + (cb / REACH) * half
  const y = (cr: number) => height / 2 - (cr / REACH) * half
  context.lineWidth = 1
  context.strokeStyle = '#3a3a3a'
  context.beginPath()
  context.arc(x(0), y(0), (0.5 / REACH) * half, 0, 2 * Math.PI)
  context.moveTo(x(-0.5), y(0))
  context.lineTo(x(0.5), y(0))
  context.moveTo(x(0), y(-0.5))
  context.lineTo(x(0), y(0.5))
  context.stroke()
  if (scope) {
    // Code 512 is Cb = Cr = 0 and 896 codes are one unit (BT.709-6 §4.6).
    const edge = (code: number) => (code - 512) / 896
    context.globalCompositeOperation = 'lighten'
    const left = x(edge(0))
    const top = y(edge(1024))
    context.drawImage(trace(scope), left, top, x(edge(1024)) - left, y(edge(0)) - top)
    context.globalCompositeOperation = 'source-over'
  }
  context.font = '10px "Inter Variable", sans-serif'
  context.textAlign = 'center'
  context.textBaseline = 'middle'
  for (const amplitude of [0.75, 1]) {
    const box = amplitude === 1 ? 2 : 4
    context.strokeStyle = amplitude === 1 ? '#6f6f6f' : '#b0b0b0'
    for (const { cb, cr } of vectorscopeTargets(matrix, amplitude))
      context.strokeRect(x(cb) - box, y(cr) - box, 2 * box, 2 * box)
  }
  context.fillStyle = '#a3a3a3'
  for (const { name, cb, cr } of vectorscopeTargets(matrix, 0.75)) {
    const out = 1 - 11 / (Math.hypot(cb, cr) * (half / REACH))
    context.fillText(name, x(cb * out), y(cr * out))
  }
}
