import type { MatrixName } from '../core/picture/planes.ts'
import type { Still } from '../core/picture/still.ts'
import { dataAddress } from './dataAddress.ts'
import { displayBytes } from './displayBytes.ts'

/**
 * A still as a PNG picture (ISO/IEC 15948) of 8 bits for a page, as a data: address. It shows what
 * a BT.1886 display would, on one of sRGB; levels past black and peak are shown as the nearer end.
 */
export const pngDataUri = async (still: Still, matrix: MatrixName): Promise<string> => {
  const { encode } = await import('fast-png')
  const { width, height } = still
  const png = encode({ width, height, channels: 3, depth: 8, data: displayBytes(still, matrix) })
  return dataAddress('image/png', png)
}
