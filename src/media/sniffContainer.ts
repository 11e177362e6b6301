const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to))

const startsWith = (bytes: Uint8Array, ...signature: number[]): boolean =>
  signature.every((byte, i) => bytes[i] === byte)

/** Bytes of a file's beginning that `sniffContainer` looks at. */
export const SNIFFED_BYTES = 1024

/** Boxes an ISO media file may begin with when it has no `ftyp`. */
const OLD_BOXES = ['moov', 'mdat', 'wide', 'free', 'skip', 'pnot']

/** Packets of 188 bytes, or of 192 with a time code of four bytes in front of each. */
const isTransportStream = (bytes: Uint8Array): boolean =>
  [
    [0, 188],
    [4, 192],
  ].some(([first = 0, step = 188]) =>
    [0, 1, 2].every((n) => bytes[first + n * step] === 0x47 || first + n * step >= bytes.length),
  )

const riffName = (kind: string): string => {
  if (kind === 'AVI ' || kind === 'AVIX') return 'AVI'
  return kind === 'WEBP' ? 'WebP' : 'RIFF'
}

/** What a picture file is, by its first bytes. */
const sniffPicture = (bytes: Uint8Array): string | undefined => {
  if (startsWith(bytes, 0x89, 0x50, 0x4e, 0x47)) return 'PNG'
  const four = ascii(bytes, 0, 4)
  if (four === 'II*\0' || four === 'MM\0*') return 'TIFF'
  if (four === 'II+\0' || four === 'MM\0+') return 'BigTIFF'
  if (startsWith(bytes, 0xff, 0xd8, 0xff)) return 'JPEG'
  if (startsWith(bytes, 0x76, 0x2f, 0x31, 0x01)) return 'OpenEXR'
  if (four === 'SDPX' || four === 'XPDS') return 'DPX'
  return four === 'GIF8' ? 'GIF' : undefined
}

/**
 * What a file is, by its first bytes and never by its name; undefined where they tell nothing.
 * Signatures: ISO/IEC 14496-12 (MP4, MOV), EBML (Matroska, WebM), SMPTE ST 377-1 (MXF), RIFF (AVI),
 * ISO/IEC 13818-1 (transport and program streams), IEC 61834-2 (DV), PNG, TIFF, JPEG, ST 268 (DPX).
 */
export const sniffContainer = (bytes: Uint8Array): string | undefined => {
  const picture = sniffPicture(bytes)
  if (picture !== undefined) return picture
  const brand = ascii(bytes, 4, 8)
  if (brand === 'ftyp') return ascii(bytes, 8, 10) === 'qt' ? 'MOV' : 'MP4'
  if (brand === 'styp' || brand === 'moof') return 'MP4'
  if (OLD_BOXES.includes(brand)) return 'MOV'
  if (startsWith(bytes, 0x1a, 0x45, 0xdf, 0xa3))
    return ascii(bytes, 0, 64).includes('webm') ? 'WebM' : 'Matroska'
  if (startsWith(bytes, 0x06, 0x0e, 0x2b, 0x34)) return 'MXF'
  if (ascii(bytes, 0, 4) === 'RIFF') return riffName(ascii(bytes, 8, 12))
  if (startsWith(bytes, 0x00, 0x00, 0x01, 0xba)) return 'MPEG program stream'
  if (startsWith(bytes, 0x00, 0x00, 0x01, 0xb3)) return 'MPEG video'
  if (startsWith(bytes, 0x1f, 0x07, 0x00)) return 'DV stream'
  if (startsWith(bytes, 0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11)) return 'ASF'
  if (ascii(bytes, 0, 3) === 'FLV') return 'Flash video'
  if (ascii(bytes, 0, 4) === 'OggS') return 'Ogg'
  return bytes.length >= 188 && isTransportStream(bytes) ? 'MPEG transport stream' : undefined
}

/** Whether a name of `sniffContainer` is that of a single picture. */
export const isPictureKind = (kind: string | undefined): boolean =>
  ['PNG', 'TIFF', 'BigTIFF', 'JPEG', 'OpenEXR', 'DPX', 'GIF', 'WebP'].includes(kind ?? '')
