const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to))

const startsWith = (bytes: Uint8Array, ...signature: number[]): boolean =>
  signature.every((byte, i) => bytes[i] === byte)

/** Bytes of a file's beginning that `sniffContainer` looks at. */
export const SNIFFED_BYTES = 1024

/**
 * What a file is, by its first bytes and never by its name; undefined where they tell nothing.
 * Signatures: ISO/IEC 14496-12 (MP4, MOV), EBML (Matroska, WebM), SMPTE ST 377-1 (MXF), RIFF (AVI),
 * ISO/IEC 13818-1 (transport and program streams), PNG, TIFF, JPEG, ST 268 (DPX).
 */
export const sniffContainer = (bytes: Uint8Array): string | undefined => {
  const brand = ascii(bytes, 4, 8)
  if (brand === 'ftyp') return ascii(bytes, 8, 10) === 'qt' ? 'MOV' : 'MP4'
  if (['moov', 'mdat', 'wide', 'free', 'skip'].includes(brand)) return 'MOV'
  if (startsWith(bytes, 0x1a, 0x45, 0xdf, 0xa3))
    return ascii(bytes, 0, 64).includes('webm') ? 'WebM' : 'Matroska'
  if (startsWith(bytes, 0x06, 0x0e, 0x2b, 0x34)) return 'MXF'
  if (ascii(bytes, 0, 4) === 'RIFF') return ascii(bytes, 8, 11) === 'AVI' ? 'AVI' : 'RIFF'
  if (startsWith(bytes, 0x00, 0x00, 0x01, 0xba)) return 'MPEG program stream'
  if (bytes[0] === 0x47 && bytes[188] === 0x47) return 'MPEG transport stream'
  if (startsWith(bytes, 0x89, 0x50, 0x4e, 0x47)) return 'PNG'
  if (ascii(bytes, 0, 4) === 'II*\0' || ascii(bytes, 0, 4) === 'MM\0*') return 'TIFF'
  if (startsWith(bytes, 0xff, 0xd8, 0xff)) return 'JPEG'
  if (['SDPX', 'XPDS'].includes(ascii(bytes, 0, 4))) return 'DPX'
  if (ascii(bytes, 0, 3) === 'FLV') return 'Flash video'
  if (ascii(bytes, 0, 4) === 'OggS') return 'Ogg'
  return undefined
}
