import { at } from '../core/base/assert.ts'
import { crc32 } from './crc32.ts'
import { type Deflate, deflateByStream } from './deflate.ts'
import { type LaidStill, pixelDensity, type StillSignal, signalWords } from './stillPicture.ts'

/**
 * Primaries and transfer of a signal by ITU-T H.273: BT.709 1 and 1, BT.601 of 625 lines 5 and 6
 * (of 525 lines the primaries are 6), BT.2020 9 and 14.
 */
const codePoints = (signal: StillSignal, height: number): readonly number[] | undefined => {
  if (signal === 'bt709') return [1, 1]
  if (signal === 'bt601') return [height > 486 ? 5 : 6, 6]
  return signal === 'bt2020' ? [9, 14] : undefined
}

/** The parts of a chunk one after another: its data is not copied. */
const chunk = (kind: string, data: Uint8Array): readonly Uint8Array[] => {
  const start = new Uint8Array(8)
  new DataView(start.buffer).setUint32(0, data.length)
  start.set(new TextEncoder().encode(kind), 4)
  const end = new Uint8Array(4)
  new DataView(end.buffer).setUint32(0, crc32(start.subarray(4), data))
  return [start, data, end]
}

const pixelShape = (pixelAspect: number): Uint8Array => {
  const bytes = new Uint8Array(9)
  const view = new DataView(bytes.buffer)
  for (const [i, value] of pixelDensity(pixelAspect).entries()) view.setUint32(4 * i, value)
  return bytes
}

const SIGNATURE = Uint8Array.of(137, 80, 78, 71, 13, 10, 26, 10)

/** Of 16 bits, R′G′B′, deflated, filtered by a filter a line, not interlaced. */
const header = (width: number, height: number): Uint8Array => {
  const bytes = Uint8Array.of(0, 0, 0, 0, 0, 0, 0, 0, 16, 2, 0, 0, 0)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, width)
  view.setUint32(4, height)
  return bytes
}

/** Latin-1 in the standard; what is told here is plain ASCII. */
const text = (keyword: string, words: string): Uint8Array =>
  new TextEncoder().encode(`${keyword}\0${words}`)

const PIXEL_BYTES = 6
const SUB = 1

/**
 * Every line less the pixel to the left (filter Sub, ISO/IEC 15948 §9.2): of 16-bit pictures from
 * film it makes files as small as choosing among all five would, to a few in a hundred.
 */
const filtered = ({ width, height, bytes }: LaidStill): Uint8Array<ArrayBuffer> => {
  const line = PIXEL_BYTES * width
  const out = new Uint8Array((line + 1) * height)
  for (let y = 0; y < height; y++) {
    const from = y * line
    const to = y * (line + 1) + 1
    out[to - 1] = SUB
    out.set(bytes.subarray(from, from + PIXEL_BYTES), to)
    for (let x = PIXEL_BYTES; x < line; x++)
      out[to + x] = at(bytes, from + x) - at(bytes, from + x - PIXEL_BYTES)
  }
  return out
}

/**
 * A PNG file of 16 bits (ISO/IEC 15948). Its colours are told by the chunk cICP of the third
 * edition where they have code points, the shape of pixels that are not square by pHYs.
 * @param picture laid out as 'rgb16', big-endian
 */
export const encodePng = async (
  picture: LaidStill,
  deflate: Deflate = deflateByStream,
): Promise<Uint8Array<ArrayBuffer>> => {
  const { width, height, words } = picture
  const points = codePoints(words.signal, height)
  const parts = [
    SIGNATURE,
    ...chunk('IHDR', header(width, height)),
    ...(points ? chunk('cICP', Uint8Array.of(at(points, 0), at(points, 1), 0, 1)) : []),
    ...(words.pixelAspect === 1 ? [] : chunk('pHYs', pixelShape(words.pixelAspect))),
    ...chunk('tEXt', text('Software', 'Reelwright')),
    ...chunk('tEXt', text('Description', signalWords(words.signal))),
    ...chunk('IDAT', await deflate(filtered(picture))),
    ...chunk('IEND', new Uint8Array(0)),
  ]
  const bytes = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let to = 0
  for (const part of parts) {
    bytes.set(part, to)
    to += part.length
  }
  return bytes
}
