import { type Grade, mixGrade } from '../colour/grade.ts'
import { type Framing, mixFraming } from '../picture/framing.ts'
import type { Frame } from '../time/frame.ts'
import type { Cue, RampShape } from './job.ts'

/** What is in force on one frame. */
export type ValuesAt = { readonly grade: Grade; readonly framing: Framing }

/** How far values have gone when a part `t` (0…1) of a ramp has: as far, or eased. */
export const rampPart = (t: number, shape: RampShape): number =>
  shape === 'eased' ? t * t * (3 - 2 * t) : t

/**
 * What is in force on `frame` of `cue`, given the cue before it. Over a ramp of N frames the
 * values pass in N + 1 equal steps: frame k of the ramp (from 0) is (k + 1)/(N + 1) of the way,
 * and the first frame after the ramp has this cue's values. With N = 0 they change on the frame.
 * An eased ramp goes 3t² − 2t³ of the way instead of t.
 */
export const valuesAt = (cue: Cue, previous: Cue | undefined, frame: Frame): ValuesAt => {
  const step = frame - cue.first
  if (previous === undefined || step >= cue.ramp) return cue
  const t = rampPart((step + 1) / (cue.ramp + 1), cue.rampShape)
  return {
    grade: mixGrade(previous.grade, cue.grade, t),
    framing: mixFraming(previous.framing, cue.framing, t),
  }
}
