import type { Result } from '../../base/result.ts'
import type { Framing } from '../../picture/framing.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { setFraming } from './setFraming.ts'

/** Ten decimals: finer than any pixel, and free of the noise of adding floats. */
const tidy = (value: number): number => Number(value.toFixed(10))

/**
 * Makes the change from one framing to another on many cues, each keeping its differences: zoom and
 * squeeze by the same factor, the others by as much. Refuses as `setFraming` does.
 */
export const trimFraming = (
  job: Job,
  ids: readonly CueId[],
  from: Framing,
  to: Framing,
  label = 'Trim framing',
): Result<LabelledChange> => {
  const by = (field: keyof Framing) => to[field] - from[field]
  return setFraming(
    job,
    ids,
    (own) => ({
      zoom: tidy((own.zoom * to.zoom) / from.zoom),
      squeeze: tidy((own.squeeze * to.squeeze) / from.squeeze),
      pan: tidy(own.pan + by('pan')),
      tilt: tidy(own.tilt + by('tilt')),
      rotation: tidy(own.rotation + by('rotation')),
      blanking: tidy(own.blanking + by('blanking')),
    }),
    label,
  )
}
