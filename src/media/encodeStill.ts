import type { StillFormat } from '../core/formats/stillFormats.ts'
import type { RgbPicture } from '../core/picture/rgbPicture.ts'
import { DPX_TRANSFER } from './dpx/dpxFields.ts'
import { encodeDpx } from './dpx/encodeDpx.ts'
import { encodePng } from './encodePng.ts'
import { encodeTiff } from './encodeTiff.ts'
import { type StillPicture, type StillSignal, type StillWords, stillCodes } from './stillPicture.ts'

/** A frame as a file, and what of it the file does not hold. */
export type EncodedStill = {
  readonly bytes: Uint8Array<ArrayBuffer>
  /** Pixels that lay past black or peak and were clipped there. */
  readonly clipped: number
}

/** BT.2020 has no number of its own, but the curve of BT.709 (BT.2020-2 table 4). */
const transferOf = (signal: StillSignal, height: number): number => {
  if (signal === 'printing-density') return DPX_TRANSFER.printingDensity
  if (signal === 'as-scanned') return DPX_TRANSFER.userDefined
  if (signal === 'bt601') return height > 486 ? DPX_TRANSFER.bt601Of625 : DPX_TRANSFER.bt601Of525
  return DPX_TRANSFER.bt709
}

const encodeAs = (
  picture: StillPicture,
  format: StillFormat,
): Promise<Uint8Array<ArrayBuffer>> | Uint8Array<ArrayBuffer> => {
  if (format === 'png') return encodePng(picture)
  if (format === 'tiff') return encodeTiff(picture)
  const { words, ...codes } = picture
  const { signal, ...told } = words
  const transfer = transferOf(signal, picture.height)
  const colorimetric = signal === 'bt2020' ? DPX_TRANSFER.userDefined : transfer
  return encodeDpx({ ...codes, ...told, transfer, colorimetric })
}

/** A picture as a file of full-range codes, 0 black and the largest code peak. */
export const encodeStill = async (
  picture: RgbPicture,
  words: StillWords,
  format: StillFormat,
): Promise<EncodedStill> => {
  const { width, height } = picture
  const { samples, clipped } = stillCodes(picture, format === 'dpx' ? 10 : 16)
  return { bytes: await encodeAs({ width, height, samples, words }, format), clipped }
}
