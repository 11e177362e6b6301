import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { at } from '../core/base/assert.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import { BRIGHT_CSS, INSTRUMENT_FONT, LINE_CSS, MAIN_LINE_CSS, TEXT_CSS } from './instrumentInks.ts'
import { brightnessBy, inkWords, inTable, traceBitmap } from './traceBitmap.ts'
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
  /** Whether the middle is shown twice as large. */
  readonly isEnlarged: boolean
}

/** The plane is shown a little past ±0.5, so that full colours and their names have room. */
const REACH = 0.58

/** This part of a picture's pixels on one colour is drawn as bright as can be. */
const FULL_PART = 1 / 1000

const brightness = brightnessBy('logarithm')

/** Code 512 is Cb = Cr = 0 and 896 codes are one unit (BT.709-6 §4.6). */
const chromaOf = (code: number): number => (code - 512) / 896

const reachOf = (isEnlarged: boolean): number => (isEnlarged ? REACH / 2 : REACH)

const GREYS = inkWords([255, 255, 255])

const trace = ({ counts, size }: VectorscopeCounts): OffscreenCanvas => {
  const { words, show } = traceBitmap(size, size)
  let pixels = 0
  for (let i = 0; i < counts.length; i++) pixels += counts[i] as number
  const bright = brightness(pixels * FULL_PART)
  for (let i = 0; i < counts.length; i++) {
    const count = counts[i] as number
    if (count > 0) words[i] = GREYS[bright[inTable(count)] as number] as number
  }
  return show()
}

const cut = new WeakMap<VectorscopeCounts, Map<boolean, boolean>>()

/** Whether some colours lie where the plane is not shown, or past what 10-bit codes hold. */
export const isVectorscopeCut = (scope: VectorscopeCounts, isEnlarged: boolean): boolean => {
  const known = cut.get(scope) ?? new Map<boolean, boolean>()
  cut.set(scope, known)
  const isCut = known.get(isEnlarged) ?? findCut(scope, isEnlarged)
  known.set(isEnlarged, isCut)
  return isCut
}

const findCut = ({ counts, size }: VectorscopeCounts, isEnlarged: boolean): boolean => {
  const reach = reachOf(isEnlarged)
  const isOut = (bin: number): boolean =>
    bin === 0 ||
    bin === size - 1 ||
    chromaOf((bin * 1024) / size) < -reach ||
    chromaOf(((bin + 1) * 1024) / size) > reach
  const out = Array.from({ length: size }, (_, bin) => isOut(bin))
  const outColumns = [...out.keys()].filter((x) => out[x])
  for (let y = 0; y < size; y++) {
    const row = counts.subarray(y * size, (y + 1) * size)
    if (out[size - 1 - y] ? row.some((count) => count > 0) : outColumns.some((x) => at(row, x) > 0))
      return true
  }
  return false
}

type Plane = {
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
}

/** Rings at these amplitudes, and marks along the axes at each tenth. */
const RINGS = [0.25, 0.5]
const TENTHS = [0.1, 0.2, 0.3, 0.4, 0.5]

const drawGraticule = (context: CanvasRenderingContext2D, { x, y }: Plane): void => {
  context.lineWidth = 1
  for (const ring of RINGS) {
    context.strokeStyle = ring === 0.5 ? MAIN_LINE_CSS : LINE_CSS
    context.beginPath()
    context.arc(x(0), y(0), x(ring) - x(0), 0, 2 * Math.PI)
    context.stroke()
  }
  context.strokeStyle = LINE_CSS
  context.beginPath()
  context.moveTo(x(-0.5), y(0))
  context.lineTo(x(0.5), y(0))
  context.moveTo(x(0), y(-0.5))
  context.lineTo(x(0), y(0.5))
  for (const tenth of TENTHS.flatMap((value) => [value, -value])) {
    context.moveTo(x(tenth), y(0) - 3)
    context.lineTo(x(tenth), y(0) + 3)
    context.moveTo(x(0) - 3, y(tenth))
    context.lineTo(x(0) + 3, y(tenth))
  }
  context.stroke()
}

/** Boxes on the colours of bars: large ones, named, at 75 %, small ones at 100 %. */
const drawTargets = (
  context: CanvasRenderingContext2D,
  { x, y }: Plane,
  matrix: MatrixName,
): void => {
  const [, reach = 0] = x.domain()
  const shown = (amplitude: number) =>
    vectorscopeTargets(matrix, amplitude).filter(
      ({ cb, cr }) => Math.max(Math.abs(cb), Math.abs(cr)) < reach * 0.96,
    )
  for (const amplitude of [0.75, 1]) {
    const box = amplitude === 1 ? 2 : 4
    context.strokeStyle = amplitude === 1 ? '#8f8f8f' : '#b0b0b0'
    for (const { cb, cr } of shown(amplitude))
      context.strokeRect(x(cb) - box, y(cr) - box, 2 * box, 2 * box)
  }
  context.fillStyle = TEXT_CSS
  for (const { name, cb, cr } of shown(0.75)) {
    const inward = 1 - 12 / Math.hypot(x(cb) - x(0), y(cr) - y(0))
    context.fillText(name, x(cb * inward), y(cr * inward))
  }
}

/** Draws a vectorscope in CSS pixels: trace, graticule, the colours of 75 % and 100 % bars. */
export const drawVectorscope = (
  context: CanvasRenderingContext2D,
  scope: VectorscopeCounts | undefined,
  { width, height, matrix, isEnlarged }: VectorscopeStyle,
): void => {
  const reach = reachOf(isEnlarged)
  const half = Math.min(width, height) / 2
  const domain = [-reach, reach]
  const plane: Plane = {
    x: scaleLinear(domain, [width / 2 - half, width / 2 + half]),
    y: scaleLinear(domain, [height / 2 + half, height / 2 - half]),
  }
  context.clearRect(0, 0, width, height)
  context.save()
  context.beginPath()
  context.rect(width / 2 - half, height / 2 - half, 2 * half, 2 * half)
  context.clip()
  drawGraticule(context, plane)
  if (scope) {
    const { x, y } = plane
    // Half a code each way: the first bin begins below code 0.
    const [from, to] = [chromaOf(-0.5), chromaOf(1023.5)]
    context.imageSmoothingEnabled = true
    context.globalCompositeOperation = 'lighten'
    context.drawImage(trace(scope), x(from), y(to), x(to) - x(from), y(from) - y(to))
    context.globalCompositeOperation = 'source-over'
  }
  context.font = INSTRUMENT_FONT
  context.textAlign = 'center'
  context.textBaseline = 'middle'
  drawTargets(context, plane, matrix)
  context.restore()
  if (scope && isVectorscopeCut(scope, isEnlarged)) {
    context.strokeStyle = BRIGHT_CSS
    context.setLineDash([2, 3])
    context.strokeRect(width / 2 - half + 0.5, height / 2 - half + 0.5, 2 * half - 1, 2 * half - 1)
    context.setLineDash([])
  }
}
