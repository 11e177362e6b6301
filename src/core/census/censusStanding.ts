import { levelLimits } from '../tolerance/levelLimits.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import type { CensusVerdict } from './censusVerdict.ts'

/**
 * What a cue's colours alone settle. `inside`: no pixel leaves the limits, so none does after a
 * filter or a framing either, which only take means. `outside`: surely too much of some frame is
 * out. `open`: measuring the frames decides.
 */
export type CensusStanding = 'inside' | 'outside' | 'open'

/** Whether black, which a framing may put beside the picture, is inside. */
const isBlackInside = (profile: ToleranceProfile): boolean =>
  Object.values(levelLimits(profile)).every(([low, high]) => low <= 0 && high >= 0)

/** `isWhole`: every frame and pixel of the cue is delivered as it is, not framed or in a ramp. */
export const censusStanding = (
  verdict: CensusVerdict,
  profile: ToleranceProfile,
  isWhole: boolean,
): CensusStanding => {
  if (verdict.outsideAtMost === 0) return isWhole || isBlackInside(profile) ? 'inside' : 'open'
  // If more than the allowed part of all pixels is out, it is so in at least one frame.
  const isOutside =
    isWhole && !profile.filtered && verdict.outsideAtLeast > profile.area * verdict.pixels
  return isOutside ? 'outside' : 'open'
}
