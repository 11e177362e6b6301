/** Reads a stretch of a file; fewer bytes where the file ends. */
export type ReadAt = (offset: number, length: number) => Promise<Uint8Array>

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)

const MOST_BOXES = 100_000

/** Where the boxes of an ISO media file end by their own sizes (ISO/IEC 14496-12 §4.2). */
const endOfBoxes = async (size: number, readAt: ReadAt): Promise<number> => {
  let end = 0
  for (let boxes = 0; end + 8 <= size && boxes < MOST_BOXES; boxes++) {
    const header = viewOf(await readAt(end, 16))
    if (header.byteLength < 8) return end
    const short = header.getUint32(0)
    if (short === 0) return size
    const isLong = short === 1
    if (isLong && header.byteLength < 16) return end + 16
    const length = isLong ? Number(header.getBigUint64(8)) : short
    if (length < 8) return end
    end += length
  }
  return end
}

/** An EBML number of variable length (RFC 8794 §4), its marker cut off for a size. */
const readVarint = (bytes: Uint8Array, at: number, keepsMarker: boolean) => {
  const first = bytes[at] ?? 0
  const length = Math.clz32(first) - 23
  if (length > 8 || at + length > bytes.length) return undefined
  let value = keepsMarker ? first : first & (0xff >> length)
  let isUnknown = !keepsMarker && value === 0xff >> length
  for (let i = 1; i < length; i++) {
    const byte = bytes[at + i] ?? 0
    isUnknown &&= byte === 0xff
    value = value * 256 + byte
  }
  return { value, next: at + length, isUnknown }
}

const SEGMENT = 0x18538067

/** Where the segment of a Matroska file ends by its own size (RFC 9559 §5). */
const endOfSegment = async (size: number, readAt: ReadAt): Promise<number> => {
  const beginning = await readAt(0, 4096)
  let at = 0
  for (;;) {
    const id = readVarint(beginning, at, true)
    const length = id && readVarint(beginning, id.next, false)
    if (!length || length.isUnknown) return size
    at = length.next + length.value
    if (id.value === SEGMENT) return at
  }
}

/** Bytes a file lacks by the sizes written in it; 0 where it is whole, or cannot tell. */
export const missingBytes = async (
  container: string,
  size: number,
  readAt: ReadAt,
): Promise<number> => {
  if (container === 'MP4' || container === 'MOV')
    return Math.max(0, (await endOfBoxes(size, readAt)) - size)
  if (container === 'Matroska' || container === 'WebM')
    return Math.max(0, (await endOfSegment(size, readAt)) - size)
  return 0
}
