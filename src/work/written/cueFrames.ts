import type { Cue } from '../../core/job/job.ts'
import { type Frame, frame } from '../../core/time/frame.ts'

/** A frame that is compared by value, and the cue it belongs to. */
export type CueFrame = { readonly frame: Frame; readonly index: number }

/**
 * The first frame of every cue, the first past its ramp, and its last, by the frame of the reel:
 * a change that comes a frame late shows on the one, a frame early on the other.
 */
export const cueFrames = (
  cues: readonly Pick<Cue, 'first' | 'ramp'>[],
  reelFrames: number,
): ReadonlyMap<number, CueFrame> => {
  const places = new Map<number, CueFrame>()
  for (const [index, { first, ramp }] of cues.entries()) {
    const end = cues[index + 1]?.first ?? reelFrames
    for (const at of [first, first + ramp, end - 1])
      if (at < end) places.set(at, { frame: frame(at), index })
  }
  return places
}
