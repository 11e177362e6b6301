import { type Framing, isOnlyBlanked } from '../picture/framing.ts'
import { levelLimits } from '../tolerance/levelLimits.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import type { CensusVerdict } from './censusVerdict.ts'

/**
 * What a cue's colours alone settle. `inside`: no pixel leaves the limits, and none does after the
 * filter either, which only takes means. `outside`: surely too much of some frame is out. `open`:
 * measuring the frames decides.
 */
export type CensusStanding = 'inside' | 'outside' | 'open'

/**
 * How the pixels that were counted become the delivered ones. `as-scanned`: each as it is, all of
 * them, on every frame. `blanked`: the same, with black beside them. `mixed`: some frames are in a
 * ramp, or the framing reads between pixels, where it may go past both of them (`framePicture`).
 */
export type PixelDelivery = 'as-scanned' | 'blanked' | 'mixed'

export const pixelDelivery = (framing: Framing, isRamped: boolean): PixelDelivery =>
  isRamped || !isOnlyBlanked(framing) ? 'mixed' : framing.blanking === 0 ? 'as-scanned' : 'blanked'

/** Whether black, which blanking puts beside the picture, is inside. */
const isBlackInside = (profile: ToleranceProfile): boolean =>
  Object.values(levelLimits(profile)).every(([low, high]) => low <= 0 && high >= 0)

export const censusStanding = (
  verdict: CensusVerdict,
  profile: ToleranceProfile,
  delivery: PixelDelivery,
): CensusStanding => {
  if (delivery === 'mixed') return 'open'
  const isWhole = delivery === 'as-scanned'
  if (verdict.outsideAtMost === 0) return isWhole || isBlackInside(profile) ? 'inside' : 'open'
  // If more than the allowed part of all pixels is out, it is so in at least one frame.
  const isOutside =
    isWhole && !profile.filtered && verdict.outsideAtLeast > profile.area * verdict.pixels
  return isOutside ? 'outside' : 'open'
}
