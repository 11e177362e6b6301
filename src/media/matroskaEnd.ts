import type { ReadAt } from './readAt.ts'

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

/** Where the segment of a Matroska file ends by its own size (RFC 9559 §5); `size` if unstated. */
export const endOfSegment = async (size: number, readAt: ReadAt): Promise<number> => {
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
