import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import { type Framing, sameFraming } from '../../picture/framing.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { cuesById, editCues } from './cueCommand.ts'

/** Zoom stays where a picture is still a picture; pan and tilt within one whole picture. */
export const FRAMING_LIMITS = { zoom: [0.25, 8], shift: [-1, 1] } as const

const isWithin = (value: number, [low, high]: readonly [number, number]): boolean =>
  value >= low && value <= high

/** Changes the framing of cues, each from its own. Zoom 0.25…8; pan and tilt −1…1 pictures. */
export const setFraming = (
  job: Job,
  ids: readonly CueId[],
  edit: (framing: Framing) => Framing,
  label = 'Framing',
): Result<LabelledChange> => {
  const cues = cuesById(job, ids)
  if (!cues.ok) return cues
  for (const cue of cues.value) {
    const framing = edit(cue.framing)
    if (!isWithin(framing.zoom, FRAMING_LIMITS.zoom))
      return fail(
        problem('out-of-range', `Zoom goes from 0.25 to 8; ${framing.zoom} does not fit.`, {
          field: 'zoom',
        }),
      )
    for (const field of ['pan', 'tilt'] as const)
      if (!isWithin(framing[field], FRAMING_LIMITS.shift))
        return fail(
          problem('out-of-range', `The ${field} goes from −100 % to 100 % of the picture.`, {
            field,
          }),
        )
  }
  return editCues(job, ids, label, (cue) => {
    const framing = edit(cue.framing)
    return sameFraming(framing, cue.framing) ? cue : { ...cue, framing }
  })
}
