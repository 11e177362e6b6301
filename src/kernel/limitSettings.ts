import { LUMA_WEIGHTS } from '../core/colour/lumaWeights.ts'
import { type Limiter, limiterOf } from '../core/tolerance/limiter.ts'
import { LEAST_MOVE } from '../core/tolerance/limitPicture.ts'
import type { DeliverOptions, KernelInput } from './kernel.ts'
import type { Settings } from './kernelModule.ts'

const settingsOf = ({ matrix, rgb, luma, composite, neutral }: Limiter): Settings => {
  const [redOfLimitedLuma, greenOfLimitedLuma, blueOfLimitedLuma] = LUMA_WEIGHTS[matrix]
  return {
    isLimited: true,
    limitsRgb: rgb !== undefined,
    ...(rgb && { rgbFrom: rgb.low + rgb.knee, rgbTo: rgb.high - rgb.knee, rgbKnee: rgb.knee }),
    limitsLuma: luma !== undefined,
    redOfLimitedLuma,
    greenOfLimitedLuma,
    blueOfLimitedLuma,
    ...(luma && {
      lumaFrom: luma.low + luma.knee,
      lumaTo: luma.high - luma.knee,
      lumaKnee: luma.knee,
    }),
    limitsComposite: composite !== undefined,
    ...(composite && {
      leastPeak: composite.low,
      mostPeak: composite.high,
      peakKnee: composite.knee,
    }),
    darkestGrey: neutral[0],
    lightestGrey: neutral[1],
    leastMove: LEAST_MOVE,
  }
}

/** The limiter of a delivery, by the luma equation that its tolerance is measured with. */
export const limitSettings = (
  limiter: DeliverOptions['limiter'],
  { coding }: KernelInput,
): Settings =>
  limiter && limiter.limiting !== 'none'
    ? settingsOf(limiterOf(limiter.profile, limiter.limiting, coding.matrix))
    : { isLimited: false }
