import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import { type Framing, sameFraming } from '../../picture/framing.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { cuesById, editCues } from './cueCommand.ts'

/**
 * Zoom and squeeze stay where a picture is still a picture, pan and tilt within one whole picture;
 * some of it stays open.
 */
export const FRAMING_LIMITS = {
  zoom: [0.25, 8],
  pan: [-1, 1],
  tilt: [-1, 1],
  rotation: [-180, 180],
  squeeze: [0.25, 4],
  blanking: [-0.95, 0.95],
} as const

/** How the limits are said. */
const LIMIT_WORDS: Readonly<Record<keyof Framing, string>> = {
  zoom: 'Zoom goes from 0.25 to 8',
  pan: 'Pan goes from −100 % to 100 % of the picture',
  tilt: 'Tilt goes from −100 % to 100 % of the picture',
  rotation: 'Rotation goes from −180° to 180°',
  squeeze: 'Squeeze goes from 0.25 to 4',
  blanking: 'Blanking goes from −95 % (of the width) to 95 % (of the height)',
}

const isWithin = (value: number, [low, high]: readonly [number, number]): boolean =>
  value >= low && value <= high

/** Changes the framing of cues, each from its own, within `FRAMING_LIMITS`. */
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
    for (const field of Object.keys(FRAMING_LIMITS) as (keyof Framing)[])
      if (!isWithin(framing[field], FRAMING_LIMITS[field]))
        return fail(
          problem('out-of-range', `${LIMIT_WORDS[field]}; ${framing[field]} does not fit.`, {
            field,
          }),
        )
  }
  return editCues(job, ids, label, (cue) => {
    const framing = edit(cue.framing)
    return sameFraming(framing, cue.framing) ? cue : { ...cue, framing }
  })
}
