import type { MatrixName } from '../core/picture/planes.ts'
import type { Still } from '../core/picture/still.ts'
import { dataAddress } from './dataAddress.ts'
import { displayBytes } from './displayBytes.ts'
import { pngDataUri } from './pngDataUri.ts'

/** Good to judge a look by on any screen; by common practice, no published source. */
export const JPEG_QUALITY = 0.9

/**
 * A still as a JPEG picture for a page, as a data: address, shown as `pngDataUri` shows it; a PNG
 * where this host draws nothing.
 */
export const jpegAddress = async (still: Still, matrix: MatrixName): Promise<string> => {
  const { width, height } = still
  const context =
    typeof OffscreenCanvas === 'undefined'
      ? undefined
      : new OffscreenCanvas(width, height).getContext('2d')
  if (!context) return pngDataUri(still, matrix)
  const rgb = displayBytes(still, matrix)
  const image = context.createImageData(width, height)
  for (let pixel = 0; pixel < width * height; pixel++) {
    image.data.set(rgb.subarray(3 * pixel, 3 * pixel + 3), 4 * pixel)
    image.data[4 * pixel + 3] = 255
  }
  context.putImageData(image, 0, 0)
  const blob = await context.canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY })
  return dataAddress('image/jpeg', new Uint8Array(await blob.arrayBuffer()))
}
