import { canonicalJson, type Json } from '../base/canonicalJson.ts'
import type { Result } from '../base/result.ts'
import type { PassPlan } from './passPlan.ts'

/**
 * All that decides the pictures a pass writes, in canonical form (RFC 8785): the reel's particulars,
 * coding and base, its cues' places and values, and how it is transferred. Two plans with this text
 * alike write the same pictures from the same scan. Refuses numbers that are not finite.
 */
export const decidedText = ({ title, reel, cues, profile, settings }: PassPlan): Result<string> => {
  const { name, gauge, rate, frames, startCount, isDropFrame, base, media } = reel
  const { width, height, displayAspect, depth, layout, matrix, range } = media
  const { limiting, head } = settings
  const isSlated = head.slate > 0
  return canonicalJson({
    reel: { rate, frames, startCount, isDropFrame, base },
    media: { width, height, displayAspect, depth, layout, matrix, range },
    cues: cues.map(({ first, ramp, rampShape, grade, framing }) => ({
      first,
      ramp,
      rampShape,
      grade,
      framing,
    })),
    limits: limiting === 'none' ? null : profile,
    slate: isSlated ? { title, name, gauge, scan: media.name } : null,
    settings,
  } as unknown as Json)
}
