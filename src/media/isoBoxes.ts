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

export type InnerBox = { readonly kind: string; readonly body: Uint8Array }

/** The boxes that lie one after another in some bytes, as far as they are whole. */
export function* innerBoxes(bytes: Uint8Array): Generator<InnerBox> {
  for (let at = 0; at + 8 <= bytes.length; ) {
    const end = at + viewOf(bytes).getUint32(at)
    if (end < at + 8 || end > bytes.length) return
    const kind = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
    yield { kind, body: bytes.subarray(at + 8, end) }
    at = end
  }
}
