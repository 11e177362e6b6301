import { at } from '../core/base/assert.ts'
import {
  interleaved,
  pixelDensity,
  type StillPicture,
  type StillSignal,
  signalWords,
} from './stillPicture.ts'

/**
 * Primaries and transfer of a signal by ITU-T H.273: BT.709 1 and 1, BT.601 of 625 lines 5 and 6
 * (of 525 lines the primaries are 6), BT.2020 9 and 14.
 */
const codePoints = (signal: StillSignal, height: number): readonly number[] | undefined => {
  if (signal === 'bt709') return [1, 1]
  if (signal === 'bt601') return [height > 486 ? 5 : 6, 6]
  return signal === 'bt2020' ? [9, 14] : undefined
}

/** The check of a chunk, ISO/IEC 15948 annex D. */
const crc32 = (bytes: Uint8Array): number => {
  let rest = 0xffffffff
  for (const byte of bytes) {
    rest ^= byte
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1
  }
  return ~rest >>> 0
}

const chunk = (kind: string, data: Uint8Array): Uint8Array => {
  const bytes = new Uint8Array(12 + data.length)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, data.length)
  bytes.set(new TextEncoder().encode(kind), 4)
  bytes.set(data, 8)
  view.setUint32(8 + data.length, crc32(bytes.subarray(4, 8 + data.length)))
  return bytes
}

const pixelShape = (pixelAspect: number): Uint8Array => {
  const bytes = new Uint8Array(9)
  const view = new DataView(bytes.buffer)
  for (const [i, value] of pixelDensity(pixelAspect).entries()) view.setUint32(4 * i, value)
  return bytes
}

/** Bytes of the signature and of the header chunk, after which other chunks may stand. */
const AFTER_HEADER = 8 + 25

/**
 * A PNG file of 16 bits (ISO/IEC 15948). Its colours are told by the chunk cICP of the third
 * edition where they have code points, the shape of pixels that are not square by pHYs.
 */
export const encodePng = async (picture: StillPicture): Promise<Uint8Array<ArrayBuffer>> => {
  const { encode } = await import('fast-png')
  const { width, height, words } = picture
  const png = encode({
    width,
    height,
    depth: 16,
    channels: 3,
    data: interleaved(picture),
    text: { Software: 'Reelwright', Description: signalWords(words.signal) },
  })
  const points = codePoints(words.signal, height)
  const chunks = [
    ...(points ? [chunk('cICP', Uint8Array.of(at(points, 0), at(points, 1), 0, 1))] : []),
    ...(words.pixelAspect === 1 ? [] : [chunk('pHYs', pixelShape(words.pixelAspect))]),
  ]
  const added = chunks.reduce((sum, { length }) => sum + length, 0)
  const bytes = new Uint8Array(png.length + added)
  bytes.set(png.subarray(0, AFTER_HEADER))
  let to = AFTER_HEADER
  for (const each of chunks) {
    bytes.set(each, to)
    to += each.length
  }
  bytes.set(png.subarray(AFTER_HEADER), to)
  return bytes
}
