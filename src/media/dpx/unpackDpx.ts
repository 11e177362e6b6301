import type { Samples } from '../../core/picture/planes.ts'
import { DPX_PACKING } from './dpxFields.ts'
import type { DpxHeader } from './readDpxHeader.ts'

/** Bytes that a line of samples takes, without what fills up its last word. */
const lineBytes = ({ depth, packing }: DpxHeader, samples: number): number => {
  if (depth === 8) return samples
  if (depth === 16 || (depth === 12 && packing !== DPX_PACKING.packed)) return 2 * samples
  return packing === DPX_PACKING.packed
    ? 4 * Math.ceil((samples * depth) / 32)
    : 4 * Math.ceil(samples / 3)
}

/** How lines follow each other in a file. */
export type DpxLines = {
  /** Bytes from the beginning of one line to the next. */
  readonly stride: number
  /** Bytes from the first sample to the end of the last one. */
  readonly bytes: number
}

/**
 * Lines begin on words of 32 bits (ST 268-1). Some writers leave that out, which tells where a file
 * is too short for it but not without it; ffmpeg's reader goes by the same sign.
 *
 * @param available bytes of the file from where samples begin
 */
export const dpxLines = (header: DpxHeader, available: number): DpxLines => {
  const { width, height, channels, linePadding } = header
  const line = lineBytes(header, width * channels)
  const linesOf = (whole: number): DpxLines => {
    const stride = whole + linePadding
    return { stride, bytes: stride * (height - 1) + line }
  }
  const aligned = linesOf(4 * Math.ceil(line / 4))
  return aligned.bytes <= available ? aligned : linesOf(line)
}

/** Reads sample `index` of the line that begins at byte `line`. */
type SampleReader = (line: number, index: number) => number

const sampleReader = (view: DataView, header: DpxHeader): SampleReader => {
  const { depth, packing, isBigEndian, channels } = header
  const isLittle = !isBigEndian
  const word = (at: number): number => view.getUint32(at, isLittle)
  if (depth === 8) return (line, index) => view.getUint8(line + index)
  if (depth === 16) return (line, index) => view.getUint16(line + 2 * index, isLittle)
  const mask = 2 ** depth - 1
  if (packing === DPX_PACKING.packed)
    return (line, index) => {
      const bit = index * depth
      const at = line + 4 * (bit >>> 5)
      const from = bit & 31
      const low = word(at) >>> from
      return (from + depth > 32 ? low | (word(at + 4) << (32 - from)) : low) & mask
    }
  if (depth === 12) {
    const shift = packing === DPX_PACKING.filledA ? 4 : 0
    return (line, index) => (view.getUint16(line + 2 * index, isLittle) >> shift) & mask
  }
  const pad = packing === DPX_PACKING.filledA ? 2 : 0
  // Colours lie from the highest bits down, luma alone from the lowest up: as ffmpeg reads them.
  if (channels === 1)
    return (line, index) =>
      (word(line + 4 * Math.floor(index / 3)) >>> (pad + 10 * (index % 3))) & mask
  return (line, index) =>
    (word(line + 4 * Math.floor(index / 3)) >>> (pad + 20 - 10 * (index % 3))) & mask
}

const isPlain = ({ depth, packing, channels, isMirrored }: DpxHeader): boolean =>
  depth === 10 && packing !== DPX_PACKING.packed && channels === 3 && !isMirrored

/** The common kind, a word a pixel, several times as fast as the other way. */
const unpackWords = (
  view: DataView,
  header: DpxHeader,
  stride: number,
  planes: readonly [Samples, Samples, Samples],
): void => {
  const { width, height, isUpsideDown, isBigEndian, dataOffset, packing } = header
  const pad = packing === DPX_PACKING.filledA ? 2 : 0
  const [r, g, b] = planes
  for (let row = 0; row < height; row++) {
    const line = dataOffset + stride * row
    const out = width * (isUpsideDown ? height - 1 - row : row)
    for (let x = 0; x < width; x++) {
      const word = view.getUint32(line + 4 * x, !isBigEndian) >>> pad
      r[out + x] = (word >>> 20) & 1023
      g[out + x] = (word >>> 10) & 1023
      b[out + x] = word & 1023
    }
  }
}

/**
 * The samples of a picture whose bytes are all there → planes of R′, G′ and B′, from left to right
 * and from the top down. Luma alone gives three times the same plane.
 */
export const unpackDpx = (
  view: DataView,
  header: DpxHeader,
  { stride }: DpxLines,
): readonly [Samples, Samples, Samples] => {
  const { width, height, depth, channels, order, isMirrored, isUpsideDown, dataOffset } = header
  const plane = (): Samples =>
    depth > 8 ? new Uint16Array(width * height) : new Uint8Array(width * height)
  const first = plane()
  const planes =
    channels === 1 ? ([first, first, first] as const) : ([first, plane(), plane()] as const)
  if (isPlain(header)) {
    unpackWords(view, header, stride, planes)
    return planes
  }
  const sampleAt = sampleReader(view, header)
  const [r, g, b] = order
  for (let row = 0; row < height; row++) {
    const line = dataOffset + stride * row
    const out = width * (isUpsideDown ? height - 1 - row : row)
    for (let x = 0; x < width; x++) {
      const i = out + (isMirrored ? width - 1 - x : x)
      planes[0][i] = sampleAt(line, x * channels + r)
      if (channels === 1) continue
      planes[1][i] = sampleAt(line, x * channels + g)
      planes[2][i] = sampleAt(line, x * channels + b)
    }
  }
  return planes
}
