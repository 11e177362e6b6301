import { type LaidStill, pixelDensity, signalWords } from './stillPicture.ts'

/** Types of a field's values, TIFF 6.0 §2, and the bytes of one. */
const TYPES = { ascii: [2, 1], short: [3, 2], long: [4, 4], rational: [5, 8] } as const

type Field = {
  readonly tag: number
  readonly type: keyof typeof TYPES
  /** Numbers; of rationals, those above and below the line in turn. */
  readonly values: readonly number[]
}

const ascii = (tag: number, text: string): Field => ({
  tag,
  type: 'ascii',
  values: [...new TextEncoder().encode(text), 0],
})

const valueCount = ({ type, values }: Field): number =>
  type === 'rational' ? values.length / 2 : values.length

const byteLength = (field: Field): number => valueCount(field) * TYPES[field.type][1]

const writeValues = (view: DataView, at: number, { type, values }: Field): void => {
  for (const [i, value] of values.entries())
    if (type === 'ascii') view.setUint8(at + i, value)
    else if (type === 'short') view.setUint16(at + 2 * i, value, true)
    else view.setUint32(at + 4 * i, value, true)
}

const HEADER_BYTES = 8
const ENTRY_BYTES = 12

/** Uncompressed samples of 16 bits as one strip after the header; fields in order of their tags. */
const fieldsOf = ({ width, height, words }: LaidStill): readonly Field[] => {
  const [across, down] = pixelDensity(words.pixelAspect)
  return [
    { tag: 256, type: 'long', values: [width] },
    { tag: 257, type: 'long', values: [height] },
    { tag: 258, type: 'short', values: [16, 16, 16] },
    { tag: 259, type: 'short', values: [1] },
    { tag: 262, type: 'short', values: [2] },
    ascii(270, signalWords(words.signal)),
    { tag: 273, type: 'long', values: [HEADER_BYTES] },
    { tag: 277, type: 'short', values: [3] },
    { tag: 278, type: 'long', values: [height] },
    { tag: 279, type: 'long', values: [6 * width * height] },
    { tag: 282, type: 'rational', values: [across, 1] },
    { tag: 283, type: 'rational', values: [down, 1] },
    { tag: 284, type: 'short', values: [1] },
    { tag: 296, type: 'short', values: [1] },
    ascii(305, 'Reelwright'),
  ]
}

/**
 * A TIFF 6.0 file: R′G′B′ of 16 bits, little-endian, uncompressed, its shape of pixels told.
 * @param picture laid out as 'rgb16', little-endian
 */
export const encodeTiff = (picture: LaidStill): Uint8Array<ArrayBuffer> => {
  const fields = fieldsOf(picture)
  const directory = HEADER_BYTES + 6 * picture.width * picture.height
  let outside = directory + 2 + ENTRY_BYTES * fields.length + 4
  const even = (bytes: number): number => bytes + (bytes & 1)
  const outer = fields.map(byteLength).filter((bytes) => bytes > 4)
  const bytes = new Uint8Array(outer.reduce((sum, each) => sum + even(each), outside))
  const view = new DataView(bytes.buffer)
  bytes.set([0x49, 0x49, 42, 0])
  view.setUint32(4, directory, true)
  bytes.set(picture.bytes, HEADER_BYTES)
  view.setUint16(directory, fields.length, true)
  for (const [i, field] of fields.entries()) {
    const at = directory + 2 + ENTRY_BYTES * i
    view.setUint16(at, field.tag, true)
    view.setUint16(at + 2, TYPES[field.type][0], true)
    view.setUint32(at + 4, valueCount(field), true)
    if (byteLength(field) <= 4) {
      writeValues(view, at + 8, field)
      continue
    }
    view.setUint32(at + 8, outside, true)
    writeValues(view, outside, field)
    outside += even(byteLength(field))
  }
  return bytes
}
