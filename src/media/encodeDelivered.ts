import type { StillFormat } from '../core/formats/stillFormats.ts'
import type { DeliveredForm } from '../core/transfer/deliveredForm.ts'
import { type Deflate, deflateByStream } from './deflate.ts'
import { DPX_TRANSFER } from './dpx/dpxFields.ts'
import { encodeDpxWords } from './dpx/encodeDpx.ts'
import { encodePng } from './encodePng.ts'
import { encodeTiff } from './encodeTiff.ts'
import type { StillSignal, StillWords } from './stillPicture.ts'

/** How a picture is to be laid out for each kind of file. */
export const STILL_FORMS: Readonly<Record<StillFormat, DeliveredForm>> = {
  dpx: { kind: 'words10' },
  tiff: { kind: 'rgb16', isLittleEndian: true },
  png: { kind: 'rgb16', isLittleEndian: false },
}

/** BT.2020 has no number of its own, but the curve of BT.709 (BT.2020-2 table 4). */
const transferOf = (signal: StillSignal, height: number): number => {
  if (signal === 'printing-density') return DPX_TRANSFER.printingDensity
  if (signal === 'as-scanned') return DPX_TRANSFER.userDefined
  if (signal === 'bt601') return height > 486 ? DPX_TRANSFER.bt601Of625 : DPX_TRANSFER.bt601Of525
  return DPX_TRANSFER.bt709
}

/**
 * A picture that is laid out already as a file.
 * @param bytes of the form that `STILL_FORMS` has for the format; they are not kept, but for DPX
 * in `roomForDpxWords` they become the file
 * @param deflate of PNG; in Node `deflateNode` is the quicker
 */
export const encodeDelivered = async (
  bytes: Uint8Array<ArrayBuffer>,
  { width, height }: { readonly width: number; readonly height: number },
  words: StillWords,
  format: StillFormat,
  deflate: Deflate = deflateByStream,
): Promise<Uint8Array<ArrayBuffer>> => {
  if (format === 'png') return encodePng({ width, height, bytes, words }, deflate)
  if (format === 'tiff') return encodeTiff({ width, height, bytes, words })
  const { signal, ...told } = words
  const transfer = transferOf(signal, height)
  const colorimetric = signal === 'bt2020' ? DPX_TRANSFER.userDefined : transfer
  return encodeDpxWords({ width, height, ...told, transfer, colorimetric }, bytes)
}
