import type { StillFormat } from '../core/formats/stillFormats.ts'
import type { RgbPicture } from '../core/picture/rgbPicture.ts'
import type { Deflate } from './deflate.ts'
import { encodeDelivered } from './encodeDelivered.ts'
import { rgb16Of, type StillCodes, type StillWords, stillCodes, words10Of } from './stillPicture.ts'

/** A frame as a file, and what of it the file does not hold. */
export type EncodedStill = {
  readonly bytes: Uint8Array<ArrayBuffer>
  /** Pixels that lay past black or peak and were clipped there. */
  readonly clipped: number
}

const laidAs = (codes: StillCodes, format: StillFormat): Uint8Array<ArrayBuffer> =>
  format === 'dpx' ? words10Of(codes) : rgb16Of(codes, format === 'tiff')

/** A picture as a file of full-range codes, 0 black and the largest code peak. */
export const encodeStill = async (
  picture: RgbPicture,
  words: StillWords,
  format: StillFormat,
  deflate?: Deflate,
): Promise<EncodedStill> => {
  const codes = stillCodes(picture, format === 'dpx' ? 10 : 16)
  const bytes = await encodeDelivered(laidAs(codes, format), picture, words, format, deflate)
  return { bytes, clipped: codes.clipped }
}
