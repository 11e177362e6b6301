import { type ReadAt, viewOf } from './readAt.ts'

/** The outermost boxes of an ISO media file, as far as they are of use here. */
export type IsoBoxes = {
  /** Where the last box ends by its own size: the file's length, if it is whole. */
  readonly end: number
  /** Where the sample tables lie, `moov`. */
  readonly movie: { readonly offset: number; readonly length: number } | undefined
}

const MOST_BOXES = 100_000
const MOVIE = 0x6d6f6f76

/** Goes from box to box by their sizes (ISO/IEC 14496-12 §4.2), reading their headers only. */
export const findIsoBoxes = async (size: number, readAt: ReadAt): Promise<IsoBoxes> => {
  let movie: IsoBoxes['movie']
  let end = 0
  for (let boxes = 0; end + 8 <= size && boxes < MOST_BOXES; boxes++) {
    const header = viewOf(await readAt(end, 16))
    if (header.byteLength < 8) break
    const short = header.getUint32(0)
    if (short === 0) return { end: size, movie }
    const isLong = short === 1
    if (isLong && header.byteLength < 16) return { end: end + 16, movie }
    const length = isLong ? Number(header.getBigUint64(8)) : short
    if (length < 8) break
    if (header.getUint32(4) === MOVIE) movie = { offset: end, length }
    end += length
  }
  return { end, movie }
}

const CONTAINERS = ['moov', 'trak', 'mdia', 'minf', 'stbl']

/** Sums of one track's sample tables (ISO/IEC 14496-12 §8.6, §8.7). */
type Tables = { samples: number; timed: number; shifted: number }

/** How many samples a table of (count, value) pairs is for, after version, flags and its length. */
const countPairs = (box: DataView): number => {
  const entries = Math.min(box.getUint32(4), Math.floor((box.byteLength - 8) / 8))
  let sum = 0
  for (let i = 0; i < entries; i++) sum += box.getUint32(8 + 8 * i)
  return sum
}

const countSizes = (box: DataView, fileSize: number): number => {
  const each = box.getUint32(4)
  const count = box.getUint32(8)
  const room = each === 0 ? (box.byteLength - 12) / 4 : fileSize / each
  return count > room ? Number.POSITIVE_INFINITY : count
}

const isFaulty = ({ samples, timed, shifted }: Tables): boolean =>
  samples === Number.POSITIVE_INFINITY || Math.max(timed, shifted) > 2 * samples + 1000

/**
 * Whether the sample tables inside `moov` speak of far more samples than there are: a damaged
 * file that would be taken for one of thousands of millions of pictures.
 */
export const areTablesFaulty = (moov: Uint8Array, fileSize: number): boolean => {
  let isFound = false
  const walk = (from: number, to: number, tables: Tables): void => {
    for (let at = from; at + 8 <= to && !isFound; ) {
      const header = viewOf(moov.subarray(at, at + 8))
      const end = at + header.getUint32(0)
      const kind = String.fromCharCode(...moov.subarray(at + 4, at + 8))
      if (end < at + 8 || end > to) return
      const box = viewOf(moov.subarray(at + 8, end))
      if (CONTAINERS.includes(kind)) {
        const inner = kind === 'stbl' ? { samples: 0, timed: 0, shifted: 0 } : tables
        walk(at + 8, end, inner)
        isFound ||= kind === 'stbl' && isFaulty(inner)
      } else if (box.byteLength >= 12) {
        if (kind === 'stts') tables.timed = countPairs(box)
        if (kind === 'ctts') tables.shifted = countPairs(box)
        if (kind === 'stsz') tables.samples = countSizes(box, fileSize)
        if (kind === 'stz2') tables.samples = box.getUint32(8)
      }
      at = end
    }
  }
  walk(0, moov.length, { samples: 0, timed: 0, shifted: 0 })
  return isFound
}
