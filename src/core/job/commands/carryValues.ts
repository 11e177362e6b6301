import type { Result } from '../../base/result.ts'
import { type Grade, sameGrade } from '../../colour/grade.ts'
import { type Framing, sameFraming } from '../../picture/framing.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { editCues } from './cueCommand.ts'

/** The parts of a cue's values that can be carried to others. */
export const CARRIED_PARTS = ['lift', 'gamma', 'gain', 'saturation', 'framing'] as const

export type CarriedPart = (typeof CARRIED_PARTS)[number]

/** The grade without framing. */
export const GRADE_PARTS: readonly CarriedPart[] = ['lift', 'gamma', 'gain', 'saturation']

/**
 * Gives cues these parts of a cue's values and leaves their others. Where only one of lift and gain
 * is carried and gain would come below lift, gain is raised to it, as ASC CDL needs.
 */
export const carryValues = (
  job: Job,
  ids: readonly CueId[],
  from: { readonly grade: Grade; readonly framing: Framing },
  parts: readonly CarriedPart[],
  label = 'Carry',
): Result<LabelledChange> => {
  const has = new Set(parts)
  return editCues(job, ids, label, (cue) => {
    const part = <Name extends keyof Grade>(name: Name): Grade[Name] =>
      (has.has(name) ? from : cue).grade[name]
    const lift = part('lift')
    const gain = part('gain')
    const grade: Grade = {
      lift,
      gamma: part('gamma'),
      gain: [Math.max(gain[0], lift[0]), Math.max(gain[1], lift[1]), Math.max(gain[2], lift[2])],
      saturation: part('saturation'),
    }
    const framing = has.has('framing') ? from.framing : cue.framing
    return sameGrade(grade, cue.grade) && sameFraming(framing, cue.framing)
      ? cue
      : { ...cue, grade, framing }
  })
}
