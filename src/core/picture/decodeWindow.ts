import { at } from '../base/assert.ts'
import { decodePlanes } from './decodePlanes.ts'
import type { PixelWindow } from './framing.ts'
import { type Coding, chromaWidth, type Planes, type Samples } from './planes.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'

/** Pixels taken along on each side: as far as the interpolation of chroma reaches, and even. */
const MARGIN = 4

/** A part of a plane, `width` samples a row. */
const cutPlane = (plane: Samples, width: number, part: PixelWindow): Samples => {
  const columns = part.right - part.left
  const size = columns * (part.bottom - part.top)
  const out = plane instanceof Uint8Array ? new Uint8Array(size) : new Uint16Array(size)
  for (let y = part.top; y < part.bottom; y++) {
    const from = y * width
    out.set(plane.subarray(from + part.left, from + part.right), (y - part.top) * columns)
  }
  return out
}

const halved = (size: number): number => (size + 1) >> 1

/** The window and a margin round it, from an even column and row, inside the picture. */
const withMargin = (window: PixelWindow, width: number, height: number): PixelWindow => ({
  left: Math.max(0, (window.left & ~1) - MARGIN),
  right: Math.min(width, window.right + MARGIN),
  top: Math.max(0, (window.top & ~1) - MARGIN),
  bottom: Math.min(height, window.bottom + MARGIN),
})

/**
 * The pixels of `window`, which lies inside the picture, as `decodePlanes` decodes the whole of it,
 * at the cost of the window alone.
 */
export const decodeWindow = (planes: Planes, coding: Coding, window: PixelWindow): RgbPicture => {
  const { width, height, layout, depth, samples } = planes
  const part = withMargin(window, width, height)
  const chroma = {
    left: layout === '420' || layout === '422' ? part.left / 2 : part.left,
    right: layout === '420' || layout === '422' ? halved(part.right) : part.right,
    top: layout === '420' ? part.top / 2 : part.top,
    bottom: layout === '420' ? halved(part.bottom) : part.bottom,
  }
  const chromaColumns = chromaWidth(layout, width)
  const decoded = decodePlanes(
    {
      width: part.right - part.left,
      height: part.bottom - part.top,
      layout,
      depth,
      samples: [
        cutPlane(samples[0], width, part),
        cutPlane(samples[1], chromaColumns, chroma),
        cutPlane(samples[2], chromaColumns, chroma),
      ],
    },
    coding,
  )
  const out = rgbPicture(window.right - window.left, window.bottom - window.top)
  for (let y = 0; y < out.height; y++)
    for (let x = 0; x < out.width; x++) {
      const from = (y + window.top - part.top) * decoded.width + x + window.left - part.left
      out.r[y * out.width + x] = at(decoded.r, from)
      out.g[y * out.width + x] = at(decoded.g, from)
      out.b[y * out.width + x] = at(decoded.b, from)
    }
  return out
}
