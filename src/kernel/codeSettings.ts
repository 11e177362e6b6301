import { codeScale } from '../core/colour/codeValues.ts'
import { LUMA_WEIGHTS } from '../core/colour/lumaWeights.ts'
import { mapTriple } from '../core/colour/triple.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import { beforeSaturation } from './beforeSaturation.ts'
import type { Settings } from './kernelModule.ts'

/** Saturation, luma equation and 10-bit narrow-range scale as one 3×3 matrix with offsets. */
export const codeSettings = (saturation: number, matrix: MatrixName): Settings => {
  const { black, peak, chromaZero, chromaHalf } = codeScale(10, 'narrow')
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const scaled = (row: readonly [number, number, number], scale: number) =>
    mapTriple(beforeSaturation(row, saturation), (weight) => weight * scale)
  const [rToY, gToY, bToY] = scaled([kr, kg, kb], peak - black)
  const [rToCb, gToCb, bToCb] = scaled([-kr, -kg, 1 - kb], chromaHalf / (1 - kb))
  const [rToCr, gToCr, bToCr] = scaled([1 - kr, -kg, -kb], chromaHalf / (1 - kr))
  return {
    rToY,
    gToY,
    bToY,
    rToCb,
    gToCb,
    bToCb,
    rToCr,
    gToCr,
    bToCr,
    lumaBlack: black,
    chromaMiddle: chromaZero,
  }
}
