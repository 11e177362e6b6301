import { IDENTITY_GRADE } from '../colour/grade.ts'
import { IDENTITY_FRAMING } from '../picture/framing.ts'
import type { Frame } from '../time/frame.ts'
import type { BoundaryFound, Cue } from './job.ts'
import type { CueId, ReelId } from './recordIds.ts'

/** A cue that changes nothing, beginning at `first`. */
export const newCue = (
  id: CueId,
  reel: ReelId,
  first: Frame,
  boundary: BoundaryFound,
  ramp = 0,
): Cue => ({
  id,
  reel,
  first,
  ramp,
  rampShape: 'linear',
  boundary,
  grade: IDENTITY_GRADE,
  gradeName: '',
  alternates: [],
  framing: IDENTITY_FRAMING,
  scene: '',
  note: '',
  answers: [],
  foreign: [],
})
