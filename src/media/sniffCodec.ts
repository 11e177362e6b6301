import { codecName } from './codecNames.ts'

/** Bytes of a file's beginning that `sniffCodec` looks at. */
export const SNIFFED_FOR_CODEC = 256 * 1024

/** Where a run of bytes begins at or after `from`; −1 where it is not. */
const find = (bytes: Uint8Array, wanted: readonly number[], from = 0): number => {
  const [first = 0] = wanted
  for (let at = bytes.indexOf(first, from); at >= 0; at = bytes.indexOf(first, at + 1))
    if (wanted.every((byte, i) => bytes[at + i] === byte)) return at
  return -1
}

const ascii = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0))

/** The stream header of an AVI file names the handler of its pictures. */
const inAvi = (bytes: Uint8Array): string | undefined => {
  const at = find(bytes, ascii('vids'))
  if (at < 0) return undefined
  const handler = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
  return /^[\w ]{4}$/u.test(handler) ? codecName(handler) : undefined
}

const CODEC_PRIVATE = [0x63, 0xa2] as const

/** Matroska (RFC 9559) may name a codec as AVI does: four letters in its private data, byte 16. */
const inMatroska = (bytes: Uint8Array): string | undefined => {
  const named = find(bytes, ascii('V_MS/VFW/FOURCC'))
  const at = named < 0 ? -1 : find(bytes, CODEC_PRIVATE)
  if (at < 0) return undefined
  const data = at + 2 + Math.clz32(bytes[at + 2] ?? 0) - 23
  return codecName(String.fromCharCode(...bytes.subarray(data + 16, data + 20)))
}

/** A sequence header (ISO/IEC 13818-2 §6.2.2.1) stands in MPEG-1 too; its extension does not. */
const inMpeg = (bytes: Uint8Array): string | undefined => {
  const at = find(bytes, [0, 0, 1, 0xb3])
  if (at < 0) return undefined
  return find(bytes.subarray(at, at + 256), [0, 0, 1, 0xb5]) < 0 ? 'MPEG-1' : 'MPEG-2'
}

/**
 * The kind of essence in the label of an MXF container (SMPTE ST 379-2), byte 14. VC-3, MPEG,
 * H.264, JPEG 2000 and DV were checked on files made by ffmpeg; the others are from memory.
 */
const MXF_ESSENCE: Readonly<Record<number, string>> = {
  1: 'MPEG-2',
  2: 'DV',
  4: 'MPEG-2',
  5: 'uncompressed',
  12: 'JPEG 2000',
  16: 'H.264',
  17: 'VC-3',
  28: 'ProRes',
}
const MXF_LABEL = [0x0d, 0x01, 0x03, 0x01, 0x02] as const

const inMxf = (bytes: Uint8Array): string | undefined => {
  for (let at = find(bytes, MXF_LABEL); at >= 0; at = find(bytes, MXF_LABEL, at + 1)) {
    const name = MXF_ESSENCE[bytes[at + MXF_LABEL.length] ?? 0]
    if (name !== undefined) return name
  }
  return undefined
}

/** The codec of the pictures in a container whose reader does not tell, where its beginning does. */
export const sniffCodec = (container: string, bytes: Uint8Array): string | undefined => {
  if (container === 'AVI') return inAvi(bytes)
  if (container === 'MXF') return inMxf(bytes)
  if (container === 'Matroska') return inMatroska(bytes)
  return container.startsWith('MPEG') ? inMpeg(bytes) : undefined
}
