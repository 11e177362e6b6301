/** Bits mixed until each depends on all: the end of MurmurHash3 (public domain), 32 bits. */
const mixed = (hash: number): number => {
  const a = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b)
  const b = Math.imul(a ^ (a >>> 13), 0xc2b2ae35)
  return (b ^ (b >>> 16)) >>> 0
}

/** FNV-1a over UTF-16 units from a starting value, 32 bits. */
const hashed = (text: string, start: number): number => {
  let hash = start
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  return mixed(hash)
}

const STARTS = [0x811c9dc5, 0x2545f491, 0x9e3779b9, 0x6c62272e]

/**
 * A UUID made from a text, the same for the same text: version 8 of RFC 9562 §5.8, whose bits are
 * the maker's choice. Unlike texts get unlike ones, but not against anyone who wants them alike.
 */
export const textUuid = (text: string): string => {
  const hex = STARTS.map((start) => hashed(text, start).toString(16).padStart(8, '0')).join('')
  const variant = ((Number.parseInt(hex.charAt(16), 16) & 0b0011) | 0b1000).toString(16)
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20),
  ].join('-')
}
