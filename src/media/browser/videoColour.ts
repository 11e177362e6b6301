import type { PassPlan } from '../../core/transfer/passPlan.ts'
import { videoTags } from '../../core/transfer/videoTags.ts'

/** Curves that WebCodecs has no name for go by that of the same curve (H.273 table 3). */
const TRANSFER: Readonly<Record<string, VideoTransferCharacteristics>> = {
  bt709: 'bt709',
  smpte170m: 'smpte170m',
  'bt2020-10': 'bt709',
}

/** The colour of a plan's video as WebCodecs states it. */
export const videoColour = (plan: PassPlan): VideoColorSpaceInit => {
  const { matrix, primaries, transfer } = videoTags(plan)
  return {
    matrix: matrix as VideoMatrixCoefficients,
    primaries: primaries as VideoColorPrimaries,
    transfer: TRANSFER[transfer] ?? 'bt709',
    fullRange: false,
  }
}
