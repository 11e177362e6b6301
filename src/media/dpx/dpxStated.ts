import { codeScale } from '../../core/colour/codeValues.ts'
import type { RangeName } from '../../core/picture/planes.ts'
import { type Rate, snapRate } from '../../core/time/rate.ts'
import { DPX_FIELD, DPX_UNDEFINED } from './dpxFields.ts'
import type { DpxFields } from './dpxHeaderFields.ts'

/** Frames a second, as the film part has it, else the television part. */
export const dpxRate = ({ float }: DpxFields): Rate | undefined => {
  const stated = [DPX_FIELD.filmRate, DPX_FIELD.videoRate].map(float)
  const perSecond = stated.find((each) => each !== undefined && each >= 1 && each <= 1000)
  return perSecond === undefined ? undefined : snapRate(perSecond)
}

/** Narrow where the header gives the codes of black and white as those of video; else full. */
export const dpxRange = ({ float, u32 }: DpxFields, depth: number): RangeName => {
  const { black, peak } = codeScale(depth, 'narrow')
  const isNarrow = (low: number | undefined, high: number | undefined) =>
    low === black && high === peak
  return isNarrow(float(DPX_FIELD.blackCode), float(DPX_FIELD.whiteCode)) ||
    isNarrow(u32(DPX_FIELD.lowCode), u32(DPX_FIELD.highCode))
    ? 'narrow'
    : 'full'
}

/** Width of a pixel over its height; 1 where not stated or past belief. */
export const dpxPixelAspect = ({ u32 }: DpxFields): number => {
  const [across, down] = [u32(DPX_FIELD.pixelAspect), u32(DPX_FIELD.pixelAspect + 4)]
  const isStated = across !== DPX_UNDEFINED && down !== DPX_UNDEFINED && across > 0 && down > 0
  const aspect = isStated ? across / down : 1
  return aspect >= 0.1 && aspect <= 10 ? aspect : 1
}
