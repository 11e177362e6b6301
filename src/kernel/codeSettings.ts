import { codeScale } from '../core/colour/codeValues.ts'
import { LUMA_WEIGHTS } from '../core/colour/lumaWeights.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import type { Settings } from './kernelModule.ts'
import { saturationSettings } from './saturationSettings.ts'

/** Saturation, luma equation and 10-bit narrow-range scale. */
export const codeSettings = (saturation: number, matrix: MatrixName): Settings => {
  const { black, peak, chromaZero, chromaHalf } = codeScale(10, 'narrow')
  const [kr, , kb] = LUMA_WEIGHTS[matrix]
  return {
    ...saturationSettings(saturation, matrix),
    lumaBlack: black,
    chromaMiddle: chromaZero,
    codesPerLevel: peak - black,
    cbPerDifference: chromaHalf / (1 - kb),
    crPerDifference: chromaHalf / (1 - kr),
  }
}
