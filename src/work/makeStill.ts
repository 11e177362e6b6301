import { at } from '../core/base/assert.ts'
import { codeScale } from '../core/colour/codeValues.ts'
import type { Triple } from '../core/colour/triple.ts'
import { yCbCrToRgb } from '../core/colour/yCbCr.ts'
import { baseColour, PRINT_BASE } from '../core/film/filmBase.ts'
import {
  type Coding,
  chromaHeight,
  chromaWidth,
  type Planes,
  type Samples,
} from '../core/picture/planes.ts'
import type { Still } from '../core/picture/still.ts'

/** Mean of a plane over the box that small pixel (x, y) of a width×height still covers. */
const boxMean = (
  plane: Samples,
  columns: number,
  rows: number,
  x: number,
  y: number,
  width: number,
  height: number,
): number => {
  const x0 = Math.floor((x * columns) / width)
  const y0 = Math.floor((y * rows) / height)
  const x1 = Math.max(x0 + 1, Math.floor(((x + 1) * columns) / width))
  const y1 = Math.max(y0 + 1, Math.floor(((y + 1) * rows) / height))
  let sum = 0
  for (let row = y0; row < y1; row++)
    for (let column = x0; column < x1; column++) sum += at(plane, row * columns + column)
  return sum / ((x1 - x0) * (y1 - y0))
}

/**
 * A still of a frame, each small pixel the mean of the code values it covers. The base is applied
 * to the mean: at this size the picture is the same, for a small part of the work.
 */
export const makeStill = (planes: Planes, coding: Coding, width: number, height: number): Still => {
  const { base = PRINT_BASE } = coding
  const { black, peak, chromaZero, chromaHalf } = codeScale(planes.depth, coding.range)
  const rgb = new Uint16Array(width * height * 3)
  const lumaOf = (code: number) => (code - black) / (peak - black)
  const chromaOf = (code: number) => (code - chromaZero) / (2 * chromaHalf)
  const [p0, p1, p2] = planes.samples
  const columns = chromaWidth(planes.layout, planes.width)
  const rows = chromaHeight(planes.layout, planes.height)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const first = boxMean(p0, planes.width, planes.height, x, y, width, height)
      const second = boxMean(p1, columns, rows, x, y, width, height)
      const third = boxMean(p2, columns, rows, x, y, width, height)
      const scanned: Triple =
        planes.layout === 'rgb'
          ? [lumaOf(first), lumaOf(second), lumaOf(third)]
          : yCbCrToRgb([lumaOf(first), chromaOf(second), chromaOf(third)], coding.matrix)
      for (const [c, value] of baseColour(scanned, base).entries())
        rgb[(y * width + x) * 3 + c] = Math.min(1023, Math.max(0, Math.round(64 + 876 * value)))
    }
  }
  return { width, height, rgb }
}
