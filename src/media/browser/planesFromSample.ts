import type { VideoSample } from 'mediabunny'
import {
  chromaHeight,
  chromaWidth,
  type Layout,
  type Planes,
  type Samples,
} from '../../core/picture/planes.ts'

type PixelFormat = NonNullable<VideoSample['format']>

/** Chroma subsampling and bit depth of a planar format's name, such as I422P10. */
const planarKind = (format: PixelFormat): { layout: Layout; depth: number } | undefined => {
  const parts = /^I(420|422|444)A?(?:P(10|12))?$/u.exec(format)
  return parts ? { layout: parts[1] as Layout, depth: Number(parts[2] ?? 8) } : undefined
}

const view = (buffer: ArrayBuffer, depth: number, offset: number, count: number): Samples =>
  depth > 8 ? new Uint16Array(buffer, offset, count) : new Uint8Array(buffer, offset, count)

const readPlanar = async (sample: VideoSample, layout: Layout, depth: number): Promise<Planes> => {
  const { width, height } = sample.visibleRect
  const bytes = depth > 8 ? 2 : 1
  const widths = [width, chromaWidth(layout, width), chromaWidth(layout, width)] as const
  const heights = [height, chromaHeight(layout, height), chromaHeight(layout, height)] as const
  let offset = 0
  const places = widths.map((columns, i) => {
    const place = { offset, stride: columns * bytes }
    offset += columns * bytes * (heights[i] ?? 0)
    return place
  })
  if (sample.hasAlpha) {
    places.push({ offset, stride: width * bytes })
    offset += width * bytes * height
  }
  const buffer = new ArrayBuffer(offset)
  await sample.copyTo(buffer, { layout: places })
  const plane = (i: 0 | 1 | 2): Samples =>
    view(buffer, depth, places[i]?.offset ?? 0, widths[i] * heights[i])
  return { width, height, layout, depth, samples: [plane(0), plane(1), plane(2)] }
}

/** Chroma that comes as Cb and Cr in turn, taken apart. */
const readInterleaved = async (sample: VideoSample): Promise<Planes> => {
  const { width, height } = sample.visibleRect
  const columns = chromaWidth('420', width)
  const count = columns * chromaHeight('420', height)
  const luma = width * height
  const buffer = new ArrayBuffer(luma + 2 * count)
  await sample.copyTo(buffer, {
    layout: [
      { offset: 0, stride: width },
      { offset: luma, stride: 2 * columns },
    ],
  })
  const both = new Uint8Array(buffer, luma)
  const cb = new Uint8Array(count)
  const cr = new Uint8Array(count)
  for (let i = 0; i < count; i++) {
    cb[i] = both[2 * i] ?? 0
    cr[i] = both[2 * i + 1] ?? 0
  }
  const y = new Uint8Array(buffer, 0, luma)
  return { width, height, layout: '420', depth: 8, samples: [y, cb, cr] }
}

const readPacked = async (sample: VideoSample, order: 'rgb' | 'bgr'): Promise<Planes> => {
  const { width, height } = sample.visibleRect
  const packed = new Uint8Array(width * height * 4)
  await sample.copyTo(packed, { layout: [{ offset: 0, stride: width * 4 }] })
  const plane = (at: number): Uint8Array => {
    const out = new Uint8Array(width * height)
    for (let i = 0; i < out.length; i++) out[i] = packed[4 * i + at] ?? 0
    return out
  }
  const [r, b] = order === 'rgb' ? [0, 2] : [2, 0]
  return { width, height, layout: 'rgb', depth: 8, samples: [plane(r), plane(1), plane(b)] }
}

/** R′G′B′ coded as three planes of one size comes as G, B, R (H.264 Annex E, matrix 0). */
const asRgb = (planes: Planes): Planes => {
  const [g, b, r] = planes.samples
  return { ...planes, layout: 'rgb', samples: [r, g, b] }
}

/**
 * The native code values of a decoded picture; undefined where the decoder hands out a picture
 * whose samples cannot be read. The sample stays open: closing it is the caller's.
 *
 * @param isRgb whether the track states that its planes are R′G′B′
 */
export const planesFromSample = async (
  sample: VideoSample,
  isRgb: boolean,
): Promise<Planes | undefined> => {
  const { format } = sample
  if (format === null) return undefined
  const planar = planarKind(format)
  if (planar) {
    const planes = await readPlanar(sample, planar.layout, planar.depth)
    return isRgb && planar.layout === '444' ? asRgb(planes) : planes
  }
  if (format === 'NV12') return readInterleaved(sample)
  if (format === 'RGBA' || format === 'RGBX') return readPacked(sample, 'rgb')
  return format === 'BGRA' || format === 'BGRX' ? readPacked(sample, 'bgr') : undefined
}
