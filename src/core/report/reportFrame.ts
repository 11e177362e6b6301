import type { Cue } from '../job/job.ts'
import { type Frame, frame } from '../time/frame.ts'

/**
 * The frame a cue is shown by in a report: the middle one of those past its ramp, which have the
 * cue's own values; the last where all of it is ramp. `end` is the first frame after the cue.
 */
export const reportFrame = (cue: Cue, previous: Cue | undefined, end: Frame): Frame => {
  const settled = cue.first + (previous ? cue.ramp : 0)
  return frame(Math.min(end - 1, settled + Math.floor(Math.max(0, end - 1 - settled) / 2)))
}
