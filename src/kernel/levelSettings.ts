import type { MatrixName } from '../core/picture/planes.ts'
import { levelLimits } from '../core/tolerance/levelLimits.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { Settings } from './kernelModule.ts'
import { saturationSettings } from './saturationSettings.ts'

/** What the taps of the filter sum to: 16 across and 4 down. It is not divided out. */
export const filterSum = (profile: ToleranceProfile): number => (profile.filtered ? 64 : 1)

/** Saturation, luma equation, filter and limits of a measurement. */
export const levelSettings = (
  saturation: number,
  matrix: MatrixName,
  profile: ToleranceProfile,
): Settings => {
  const sum = filterSum(profile)
  const { rgb, luma, composite } = levelLimits(profile)
  return {
    ...saturationSettings(saturation, matrix),
    isFiltered: profile.filtered,
    isComposite: profile.composite !== null,
    rgbLow: rgb[0] * sum,
    rgbHigh: rgb[1] * sum,
    lumaLow: luma[0] * sum,
    lumaHigh: luma[1] * sum,
    compositeLow: composite[0] * sum,
    compositeHigh: composite[1] * sum,
  }
}
