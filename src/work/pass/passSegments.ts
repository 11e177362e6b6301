import { framesPerSecond } from '../../core/time/rate.ts'
import type { OutputRange } from '../../core/transfer/outputTimeline.ts'
import type { PassPlan } from '../../core/transfer/passPlan.ts'

/** What is done again at most where a pass is cut off. */
const SEGMENT_SECONDS = 2

/** The written frames of a plan in segments of whole seconds; the last may be shorter. */
export const passSegments = ({ reel, timeline }: PassPlan): readonly OutputRange[] => {
  const length = SEGMENT_SECONDS * Math.max(1, Math.round(framesPerSecond(reel.rate)))
  return Array.from({ length: Math.ceil(timeline.frames / length) }, (_, i) => ({
    first: i * length,
    end: Math.min((i + 1) * length, timeline.frames),
  }))
}
