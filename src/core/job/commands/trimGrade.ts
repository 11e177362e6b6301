import type { Result } from '../../base/result.ts'
import type { Grade } from '../../colour/grade.ts'
import type { Triple } from '../../colour/triple.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { setGrade } from './setGrade.ts'

/** Ten decimals: finer than any code value can show, and free of the noise of adding floats. */
const tidy = (value: number): number => Number(value.toFixed(10))

const byChannel = (
  own: Triple,
  from: Triple,
  to: Triple,
  trim: (own: number, from: number, to: number) => number,
): Triple => [
  tidy(trim(own[0], from[0], to[0])),
  tidy(trim(own[1], from[1], to[1])),
  tidy(trim(own[2], from[2], to[2])),
]

const added = (own: number, from: number, to: number): number => own + (to - from)
const multiplied = (own: number, from: number, to: number): number => own * (to / from)

/**
 * Makes the change from one grade to another on many cues, each keeping its differences: lift, gain
 * and saturation move by as much, gamma by the same factor. A saturation stops at 0. Refuses as
 * `setGrade` does.
 */
export const trimGrade = (
  job: Job,
  ids: readonly CueId[],
  from: Grade,
  to: Grade,
  label = 'Trim',
): Result<LabelledChange> =>
  setGrade(
    job,
    ids,
    (own) => ({
      lift: byChannel(own.lift, from.lift, to.lift, added),
      gamma: byChannel(own.gamma, from.gamma, to.gamma, multiplied),
      gain: byChannel(own.gain, from.gain, to.gain, added),
      saturation: Math.max(0, tidy(added(own.saturation, from.saturation, to.saturation))),
    }),
    label,
  )
