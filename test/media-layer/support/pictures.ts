import { crc32, deflateSync } from 'node:zlib'
import { encode } from 'fast-png'

/** A small picture of three channels whose samples tell their place and the picture's number. */
export const drawn = (number: number, width: number, height: number, depth: 8 | 16) => {
  const data =
    depth === 8 ? new Uint8Array(width * height * 3) : new Uint16Array(width * height * 3)
  for (let i = 0; i < data.length; i++) data[i] = depth === 8 ? i + number : 257 * i + number
  return data
}

export const png = (
  data: Uint8Array | Uint16Array,
  width: number,
  height: number,
  channels: 1 | 2 | 3 | 4 = 3,
): Uint8Array<ArrayBuffer> =>
  new Uint8Array(
    encode({ width, height, data, channels, depth: data instanceof Uint16Array ? 16 : 8 }),
  )

/** A PNG picture of eight-bit indices into a palette, ISO/IEC 15948 §11. */
export const indexedPng = (
  indices: Uint8Array,
  width: number,
  height: number,
  palette: readonly (readonly number[])[],
): Uint8Array => {
  const chunk = (kind: string, data: Uint8Array): Buffer => {
    const body = Buffer.concat([Buffer.from(kind, 'latin1'), data])
    const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)]
    length.writeUInt32BE(data.length)
    check.writeUInt32BE(crc32(body))
    return Buffer.concat([length, body, check])
  }
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 3], 8)
  const rows = Array.from({ length: height }, (_, y) => [
    0,
    ...indices.subarray(y * width, (y + 1) * width),
  ])
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', header),
      chunk('PLTE', Uint8Array.from(palette.flat())),
      chunk('IDAT', deflateSync(Uint8Array.from(rows.flat()))),
      chunk('IEND', new Uint8Array()),
    ]),
  )
}

type TiffForm = {
  readonly channels?: number
  readonly bigEndian?: boolean
  readonly deflate?: boolean
  readonly photometric?: number
  readonly planar?: 1 | 2
  /** The colour map of a palette picture. */
  readonly colours?: readonly number[]
}

/** A TIFF 6.0 picture of one strip, written here by hand as a check on the reader. */
export const tiff = (
  data: Uint8Array | Uint16Array,
  width: number,
  height: number,
  form: TiffForm = {},
): Uint8Array<ArrayBuffer> => {
  const { channels = 3, bigEndian = false, deflate = false, planar = 1, colours = [] } = form
  const { photometric = channels < 3 ? 1 : 2 } = form
  const little = !bigEndian
  const bits = data instanceof Uint16Array ? 16 : 8
  const raw = new Uint8Array(data.length * (bits / 8))
  const samples = new DataView(raw.buffer)
  for (const [i, value] of data.entries())
    if (bits === 16) samples.setUint16(2 * i, value, little)
    else samples.setUint8(i, value)
  const strip = deflate ? new Uint8Array(deflateSync(raw)) : raw
  const entries: [tag: number, values: readonly number[], isLong?: boolean][] = [
    [256, [width]],
    [257, [height]],
    [258, Array.from({ length: channels }, () => bits)],
    [259, [deflate ? 8 : 1]],
    [262, [photometric]],
    [273, [8], true],
    [277, [channels]],
    [278, [height]],
    [279, [strip.length], true],
    [284, [planar]],
    ...(colours.length > 0 ? [[320, colours] as [number, readonly number[]]] : []),
    ...(channels === 2 || channels === 4 ? [[338, [2]] as [number, readonly number[]]] : []),
  ]
  const directory = 8 + strip.length + (strip.length % 2)
  let extra = directory + 2 + 12 * entries.length + 4
  const extraBytes = entries.reduce((sum, [, v]) => sum + (v.length > 2 ? 2 * v.length : 0), 0)
  const file = new Uint8Array(extra + extraBytes)
  const view = new DataView(file.buffer)
  file.set(little ? [0x49, 0x49] : [0x4d, 0x4d])
  view.setUint16(2, 42, little)
  view.setUint32(4, directory, little)
  file.set(strip, 8)
  view.setUint16(directory, entries.length, little)
  for (const [i, [tag, values, isLong = false]] of entries.entries()) {
    const at = directory + 2 + 12 * i
    view.setUint16(at, tag, little)
    view.setUint16(at + 2, isLong ? 4 : 3, little)
    view.setUint32(at + 4, values.length, little)
    if (isLong) view.setUint32(at + 8, values[0] ?? 0, little)
    else if (values.length <= 2)
      for (const [j, value] of values.entries()) view.setUint16(at + 8 + 2 * j, value, little)
    else {
      view.setUint32(at + 8, extra, little)
      for (const value of values) {
        view.setUint16(extra, value, little)
        extra += 2
      }
    }
  }
  return file
}
