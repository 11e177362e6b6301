import { type Problem, type ProblemCode, problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import type { RangeName } from '../../core/picture/planes.ts'
import type { Rate } from '../../core/time/rate.ts'
import { viewOf } from '../readAt.ts'
import {
  DPX_DESCRIPTOR,
  DPX_ELEMENT_BYTES,
  DPX_FIELD,
  DPX_GENERIC_BYTES,
  DPX_MAGIC,
  DPX_MAGIC_SWAPPED,
  DPX_PACKING,
  DPX_UNDEFINED,
  MOST_DPX_ELEMENTS,
} from './dpxFields.ts'
import { type DpxFields, dpxFieldsOf } from './dpxHeaderFields.ts'
import { dpxPixelAspect, dpxRange, dpxRate } from './dpxStated.ts'
import { dpxTimecodeLabel } from './dpxTimecode.ts'

export type DpxDepth = 8 | 10 | 12 | 16

/** How samples of 10 and 12 bits lie in words; of no meaning at 8 and 16. */
export type DpxPacking = (typeof DPX_PACKING)[keyof typeof DPX_PACKING]

/** What the header of a DPX picture says, checked as far as it can be without its samples. */
export type DpxHeader = {
  readonly isBigEndian: boolean
  readonly width: number
  readonly height: number
  readonly depth: DpxDepth
  readonly packing: DpxPacking
  /** Samples of a pixel in the file: 1 luma, 3 R′G′B′, 4 with alpha. */
  readonly channels: 1 | 3 | 4
  /** Which of a pixel's samples are R′, G′ and B′; all the first of a picture of luma alone. */
  readonly order: readonly [r: number, g: number, b: number]
  /** Where samples begin, and bytes added at the end of each line besides filling up a word. */
  readonly dataOffset: number
  readonly linePadding: number
  /** Whether lines run from right to left, and whether the lowest comes first. */
  readonly isMirrored: boolean
  readonly isUpsideDown: boolean
  /** Number of the transfer characteristic: see `DPX_TRANSFER`. */
  readonly transfer: number
  readonly range: RangeName
  /** Width of a pixel over its height; 1 where not stated. */
  readonly pixelAspect: number
  readonly rate: Rate | undefined
  /** hours:minutes:seconds:frames, with colons whether or not frames are dropped. */
  readonly timecode: string | undefined
}

/** No side of a picture is longer: far above any scanner, far below what could not be held. */
const LONGEST_SIDE = 65_535

const DEPTHS: readonly number[] = [8, 10, 12, 16] satisfies readonly DpxDepth[]

const ORDERS: Readonly<Record<number, Pick<DpxHeader, 'channels' | 'order'>>> = {
  [DPX_DESCRIPTOR.luma]: { channels: 1, order: [0, 0, 0] },
  [DPX_DESCRIPTOR.rgb]: { channels: 3, order: [0, 1, 2] },
  [DPX_DESCRIPTOR.rgba]: { channels: 4, order: [0, 1, 2] },
  [DPX_DESCRIPTOR.abgr]: { channels: 4, order: [3, 2, 1] },
}

/** What else an element may hold (ST 268-1, partly from memory). */
const DESCRIPTOR_WORDS: Readonly<Record<number, string>> = {
  1: 'red alone',
  2: 'green alone',
  3: 'blue alone',
  4: 'alpha alone',
  7: 'chroma alone',
  8: 'depth alone',
  9: 'composite video',
  100: 'Y′CbCr 4:2:2',
  101: 'Y′CbCr 4:2:2 with alpha',
  102: 'Y′CbCr 4:4:4',
  103: 'Y′CbCr 4:4:4 with alpha',
}

/** The first thing about a header that keeps its picture from being read. */
const faultOf = (fields: DpxFields, name: string): Problem | undefined => {
  const { u8, u16, u32 } = fields
  const fault = (code: ProblemCode, byte: number, says: string): Problem =>
    problem(code, says, { file: name, byte })
  const unread = (byte: number, what: string): Problem =>
    fault('cannot-decode', byte, `${name} ${what}; write it as plain DPX of R′G′B′, or as TIFF.`)
  const key = u32(DPX_FIELD.encryption)
  if (key !== DPX_UNDEFINED && key !== 0)
    return unread(DPX_FIELD.encryption, 'says that it is encrypted')
  const orientation = u16(DPX_FIELD.orientation)
  if (orientation > 3 && orientation !== 0xffff)
    return unread(DPX_FIELD.orientation, `stores columns, not lines (orientation ${orientation})`)
  const elements = u16(DPX_FIELD.elements)
  if (elements < 1 || elements > MOST_DPX_ELEMENTS)
    return fault(
      'malformed',
      DPX_FIELD.elements,
      `${name} says it holds ${elements} picture elements, where 1 to 8 can be; get it again from where it came.`,
    )
  const descriptor = u8(DPX_FIELD.descriptor)
  if (!ORDERS[descriptor]) {
    const words = DESCRIPTOR_WORDS[descriptor] ?? `a kind of samples with the number ${descriptor}`
    return unread(DPX_FIELD.descriptor, `holds ${words}`)
  }
  for (let element = 1; element < elements; element++) {
    const byte = DPX_FIELD.descriptor + element * DPX_ELEMENT_BYTES
    if (u8(byte) !== DPX_DESCRIPTOR.alpha)
      return unread(byte, `holds ${elements} picture elements, not one`)
  }
  for (const [byte, side] of [
    [DPX_FIELD.width, 'wide'],
    [DPX_FIELD.height, 'high'],
  ] as const) {
    const size = u32(byte)
    if (size < 1 || size > LONGEST_SIDE)
      return fault(
        size < 1 || size === DPX_UNDEFINED ? 'malformed' : 'too-large',
        byte,
        `${name} says it is ${size} pixels ${side}, where 1 to ${LONGEST_SIDE} can be; get it again from where it came.`,
      )
  }
  const bits = u8(DPX_FIELD.bits)
  if (!DEPTHS.includes(bits)) return unread(DPX_FIELD.bits, `has ${bits} bits a sample`)
  if (u32(DPX_FIELD.sign) === 1) return unread(DPX_FIELD.sign, 'has samples with a sign')
  const packing = u16(DPX_FIELD.packing)
  if ((bits === 10 || bits === 12) && packing > DPX_PACKING.filledB)
    return unread(DPX_FIELD.packing, `packs its samples in a way with the number ${packing}`)
  const encoding = u16(DPX_FIELD.encoding)
  if (encoding !== 0 && encoding !== 0xffff)
    return unread(
      DPX_FIELD.encoding,
      encoding === 1 ? 'is run-length encoded' : `is encoded in a way with the number ${encoding}`,
    )
  return undefined
}

/**
 * Reads the header of a DPX file (SMPTE ST 268-1) of either byte order. Refuses, by the byte of the
 * field, what this program cannot read: encrypted and encoded pictures, columns for lines, samples
 * other than luma or R′G′B′ of 8, 10, 12 or 16 bits, sizes no scan has.
 *
 * @param bytes the beginning of the file, its header at least
 * @param name of the file, for problems
 */
export const readDpxHeader = (bytes: Uint8Array, name: string): Result<DpxHeader> => {
  const fault = (code: ProblemCode, byte: number, says: string) =>
    fail(problem(code, says, { file: name, byte }))
  const view = viewOf(bytes)
  const magic = bytes.length >= 4 ? view.getUint32(0) : 0
  if (magic !== DPX_MAGIC && magic !== DPX_MAGIC_SWAPPED)
    return fault('unknown-format', DPX_FIELD.magic, `${name} does not begin as a DPX file does.`)
  if (bytes.length < DPX_GENERIC_BYTES)
    return fault(
      'malformed',
      bytes.length,
      `${name} ends within its header; get it again from where it came.`,
    )
  const isBigEndian = magic === DPX_MAGIC
  const stated = view.getUint32(DPX_FIELD.dataOffset, !isBigEndian)
  const fields = dpxFieldsOf(bytes, Math.min(bytes.length, stated), !isBigEndian)
  // The first field says how far the header goes, so the others can be read only when it is sound.
  if (stated < DPX_GENERIC_BYTES)
    return fault(
      'malformed',
      DPX_FIELD.dataOffset,
      `${name} says its picture begins within its header, at ${stated}; get it again from where it came.`,
    )
  const found = faultOf(fields, name)
  if (found) return fail(found)
  const ofElement = fields.u32(DPX_FIELD.elementOffset)
  const dataOffset = ofElement === DPX_UNDEFINED || ofElement === 0 ? stated : ofElement
  if (dataOffset < DPX_GENERIC_BYTES)
    return fault(
      'malformed',
      DPX_FIELD.elementOffset,
      `${name} says its samples begin within its header, at ${dataOffset}; get it again from where it came.`,
    )
  const depth = fields.u8(DPX_FIELD.bits) as DpxDepth
  const packing = fields.u16(DPX_FIELD.packing)
  const padding = fields.u32(DPX_FIELD.linePadding)
  const orientation = fields.u16(DPX_FIELD.orientation)
  return ok({
    isBigEndian,
    width: fields.u32(DPX_FIELD.width),
    height: fields.u32(DPX_FIELD.height),
    depth,
    packing: packing <= DPX_PACKING.filledB ? (packing as DpxPacking) : DPX_PACKING.packed,
    ...(ORDERS[fields.u8(DPX_FIELD.descriptor)] ?? { channels: 3, order: [0, 1, 2] }),
    dataOffset,
    linePadding: padding === DPX_UNDEFINED ? 0 : padding,
    isMirrored: orientation === 1 || orientation === 3,
    isUpsideDown: orientation === 2 || orientation === 3,
    transfer: fields.u8(DPX_FIELD.transfer),
    range: dpxRange(fields, depth),
    pixelAspect: dpxPixelAspect(fields),
    rate: dpxRate(fields),
    timecode: dpxTimecodeLabel(fields.u32(DPX_FIELD.timecode)),
  })
}
