import { SATURATION_WEIGHTS } from '../core/colour/grade.ts'
import { LUMA_WEIGHTS } from '../core/colour/lumaWeights.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import { beforeSaturation } from './beforeSaturation.ts'
import type { Settings } from './kernelModule.ts'

/** Saturation, and Y′ from what is not saturated yet (see `assembly/levelSettings.ts`). */
export const saturationSettings = (saturation: number, matrix: MatrixName): Settings => {
  const [redShare, greenShare, blueShare] = SATURATION_WEIGHTS.map((w) => (1 - saturation) * w)
  const [redInLuma, greenInLuma, blueInLuma] = beforeSaturation(LUMA_WEIGHTS[matrix], saturation)
  return {
    isSaturated: saturation !== 1,
    saturation,
    redShare: redShare ?? 0,
    greenShare: greenShare ?? 0,
    blueShare: blueShare ?? 0,
    redInLuma,
    greenInLuma,
    blueInLuma,
  }
}
