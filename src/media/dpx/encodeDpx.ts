import { at } from '../../core/base/assert.ts'
import type { Samples } from '../../core/picture/planes.ts'
import { framesPerSecond, type Rate } from '../../core/time/rate.ts'
import {
  DPX_DESCRIPTOR,
  DPX_ELEMENT_BYTES,
  DPX_FIELD,
  DPX_GENERIC_BYTES,
  DPX_HEADER_BYTES,
  DPX_INDUSTRY_BYTES,
  DPX_MAGIC,
  DPX_PACKING,
  DPX_UNDEFINED,
  MOST_DPX_ELEMENTS,
} from './dpxFields.ts'
import { dpxTimecodeField } from './dpxTimecode.ts'

/** What the header of a picture of 10-bit full-range codes is to say of it. */
export type DpxFacts = {
  readonly width: number
  readonly height: number
  /** Number of the transfer characteristic: see `DPX_TRANSFER`. */
  readonly transfer: number
  /** Number of the colorimetric specification, from the same list. */
  readonly colorimetric: number
  readonly name: string
  readonly rate?: Rate
  /** Label of the frame, hours:minutes:seconds:frames. */
  readonly timecode?: string
  /** Width of a pixel over its height. */
  readonly pixelAspect?: number
  /** The byte order of the file; big-endian where not said. */
  readonly isLittleEndian?: boolean
}

/** A picture of 10-bit full-range codes, and what its header is to say of it. */
export type DpxToWrite = DpxFacts & {
  /** R′, G′, B′, each width·height codes 0…1023, row by row. */
  readonly samples: readonly [Samples, Samples, Samples]
}

/** Where the first picture element has its words. */
const ELEMENT_TEXT = 820

/** The longest name its field takes, with the zero that ends it. */
const LONGEST_NAME = 99
const CREATOR = 'Reelwright'

const DEPTH = 10
const LARGEST_CODE = 1023

/** Parts of a pixel's width and height by which its shape is told in whole numbers. */
const ASPECT_PARTS = 10_000

/** Fields of text, which are zero where nothing is said: from byte, up to and not including byte. */
const TEXTS: readonly (readonly [number, number])[] = [
  [36, 660],
  ...Array.from({ length: MOST_DPX_ELEMENTS }, (_, element) => {
    const from = ELEMENT_TEXT + element * DPX_ELEMENT_BYTES
    return [from, from + 32] as const
  }),
  [1432, 1620],
  [1664, 1712],
  [1732, 1920],
]

/** Samples as words of 32 bits, a pixel each: R′ in the highest bits, the two lowest are zero. */
const writeWords = (view: DataView, { samples, isLittleEndian = false }: DpxToWrite): void => {
  const [r, g, b] = samples
  for (let i = 0; i < r.length; i++) {
    const word = (at(r, i) << 22) | (at(g, i) << 12) | (at(b, i) << 2)
    view.setUint32(DPX_HEADER_BYTES + 4 * i, word >>> 0, isLittleEndian)
  }
}

/** A file whose header is whole: `bytes`, or a new one whose words are still to be filled in. */
const fileWithHeader = (
  {
    width,
    height,
    transfer,
    colorimetric,
    name,
    rate,
    timecode,
    pixelAspect,
    isLittleEndian,
  }: DpxFacts,
  bytes = new Uint8Array(DPX_HEADER_BYTES + 4 * width * height),
): Uint8Array<ArrayBuffer> => {
  const isLittle = isLittleEndian ?? false
  const view = new DataView(bytes.buffer)
  bytes.fill(0xff, 0, DPX_HEADER_BYTES)
  for (const [from, to] of TEXTS) bytes.fill(0, from, to)
  const text = (byte: number, words: string): void =>
    bytes.set(new TextEncoder().encode(words.replace(/[^ -~]/gu, '_')), byte)
  const u8 = (byte: number, value: number): void => view.setUint8(byte, value)
  const u16 = (byte: number, value: number): void => view.setUint16(byte, value, isLittle)
  const u32 = (byte: number, value: number): void => view.setUint32(byte, value, isLittle)
  const float = (byte: number, value: number): void => view.setFloat32(byte, value, isLittle)

  u32(DPX_FIELD.magic, DPX_MAGIC)
  u32(DPX_FIELD.dataOffset, DPX_HEADER_BYTES)
  bytes.fill(0, DPX_FIELD.version, DPX_FIELD.fileSize)
  text(DPX_FIELD.version, 'V2.0')
  u32(DPX_FIELD.fileSize, bytes.length)
  u32(DPX_FIELD.ditto, 1)
  u32(DPX_FIELD.genericSize, DPX_GENERIC_BYTES)
  u32(DPX_FIELD.industrySize, DPX_INDUSTRY_BYTES)
  u32(DPX_FIELD.userSize, 0)
  text(DPX_FIELD.name, name.slice(0, LONGEST_NAME))
  text(DPX_FIELD.creator, CREATOR)

  u16(DPX_FIELD.orientation, 0)
  u16(DPX_FIELD.elements, 1)
  u32(DPX_FIELD.width, width)
  u32(DPX_FIELD.height, height)
  u32(DPX_FIELD.sign, 0)
  u32(DPX_FIELD.lowCode, 0)
  u32(DPX_FIELD.highCode, LARGEST_CODE)
  u8(DPX_FIELD.descriptor, DPX_DESCRIPTOR.rgb)
  u8(DPX_FIELD.transfer, transfer)
  u8(DPX_FIELD.colorimetric, colorimetric)
  u8(DPX_FIELD.bits, DEPTH)
  u16(DPX_FIELD.packing, DPX_PACKING.filledA)
  u16(DPX_FIELD.encoding, 0)
  u32(DPX_FIELD.elementOffset, DPX_HEADER_BYTES)
  u32(DPX_FIELD.linePadding, 0)
  u32(DPX_FIELD.linePadding + 4, 0)

  if (pixelAspect !== undefined) {
    u32(DPX_FIELD.pixelAspect, Math.round(pixelAspect * ASPECT_PARTS))
    u32(DPX_FIELD.pixelAspect + 4, ASPECT_PARTS)
  }
  if (rate !== undefined) {
    float(DPX_FIELD.filmRate, framesPerSecond(rate))
    float(DPX_FIELD.videoRate, framesPerSecond(rate))
  }
  u32(DPX_FIELD.timecode, timecode === undefined ? DPX_UNDEFINED : dpxTimecodeField(timecode))
  float(DPX_FIELD.blackCode, 0)
  float(DPX_FIELD.whiteCode, LARGEST_CODE)
  return bytes
}

/**
 * A DPX file (SMPTE ST 268-1, version V2.0) of one element: R′G′B′ of 10 bits, filled by method A,
 * left to right and from the top down. The header is whole; what is not known is left undefined, as
 * the standard has it: all ones, or no text.
 */
export const encodeDpx = (picture: DpxToWrite): Uint8Array<ArrayBuffer> => {
  const bytes = fileWithHeader(picture)
  writeWords(new DataView(bytes.buffer), picture)
  return bytes
}

/** Memory of a file of words with its header still to come: the words' part of it. */
export const roomForDpxWords = (width: number, height: number): Uint8Array<ArrayBuffer> =>
  new Uint8Array(new ArrayBuffer(DPX_HEADER_BYTES + 4 * width * height), DPX_HEADER_BYTES)

/**
 * The same big-endian file of words that are laid out already. Words in `roomForDpxWords` become
 * the file where they are; others are copied.
 * @param words width·height big-endian words of 32 bits: the form 'words10'
 */
export const encodeDpxWords = (
  facts: Omit<DpxFacts, 'isLittleEndian'>,
  words: Uint8Array<ArrayBuffer>,
): Uint8Array<ArrayBuffer> => {
  const isInPlace =
    words.byteOffset === DPX_HEADER_BYTES &&
    words.buffer.byteLength === DPX_HEADER_BYTES + words.length
  if (isInPlace) return fileWithHeader(facts, new Uint8Array(words.buffer))
  const bytes = fileWithHeader(facts)
  bytes.set(words, DPX_HEADER_BYTES)
  return bytes
}
