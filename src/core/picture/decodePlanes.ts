import { at } from '../base/assert.ts'
import { codeScale } from '../colour/codeValues.ts'
import { yCbCrToRgbFactors } from '../colour/yCbCr.ts'
import { basePicture } from './basePicture.ts'
import { type Coding, chromaHeight, chromaWidth, type Planes, type Samples } from './planes.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'

/**
 * Code values → normalised R′G′B′, by the stated matrix, range and base. Chroma is brought to every
 * pixel by linear interpolation at its siting (see `Planes`), edge samples repeated. Unclipped.
 */
export const decodePlanes = (planes: Planes, coding: Coding): RgbPicture => {
  const scanned = scannedPicture(planes, coding)
  return coding.base ? basePicture(scanned, coding.base) : scanned
}

const scannedPicture = (planes: Planes, coding: Coding): RgbPicture => {
  const { width, height, layout, depth, samples } = planes
  const { black, peak, chromaZero, chromaHalf } = codeScale(depth, coding.range)
  const out = rgbPicture(width, height)
  const scale = 1 / (peak - black)
  const count = width * height
  if (layout === 'rgb') {
    for (let i = 0; i < count; i++) {
      out.r[i] = (at(samples[0], i) - black) * scale
      out.g[i] = (at(samples[1], i) - black) * scale
      out.b[i] = (at(samples[2], i) - black) * scale
    }
    return out
  }
  const { crToR, cbToB, cbToG, crToG } = yCbCrToRgbFactors(coding.matrix)
  const chromaScale = 1 / (2 * chromaHalf)
  const chromaAt = chromaSampler(planes)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x
      const luma = (at(samples[0], i) - black) * scale
      const cb = (chromaAt(samples[1], x, y) - chromaZero) * chromaScale
      const cr = (chromaAt(samples[2], x, y) - chromaZero) * chromaScale
      out.r[i] = luma + crToR * cr
      out.g[i] = luma + cbToG * cb + crToG * cr
      out.b[i] = luma + cbToB * cb
    }
  }
  return out
}

/** A chroma plane read at a luma pixel: interpolated between its sited samples. */
const chromaSampler = ({ layout, width, height }: Planes) => {
  const columns = chromaWidth(layout, width)
  const rows = chromaHeight(layout, height)
  if (layout === '444' || layout === 'rgb')
    return (plane: Samples, x: number, y: number) => at(plane, y * width + x)
  return (plane: Samples, x: number, y: number): number => {
    const cx = x / 2
    const cy = layout === '420' ? y / 2 - 0.25 : y
    const x0 = Math.floor(cx)
    const y0 = Math.floor(cy)
    const x1 = Math.min(x0 + 1, columns - 1)
    const top = Math.max(y0, 0) * columns
    const bottom = Math.min(y0 + 1, rows - 1) * columns
    const fx = cx - x0
    const fy = cy - y0
    const upper = at(plane, top + x0) * (1 - fx) + at(plane, top + x1) * fx
    const lower = at(plane, bottom + x0) * (1 - fx) + at(plane, bottom + x1) * fx
    return upper * (1 - fy) + lower * fy
  }
}
