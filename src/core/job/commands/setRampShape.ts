import type { Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job, RampShape } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { editCues } from './cueCommand.ts'

/** Sets how values pass over the ramps of cues: evenly, or slowly at both ends. */
export const setRampShape = (
  job: Job,
  ids: readonly CueId[],
  rampShape: RampShape,
): Result<LabelledChange> =>
  editCues(job, ids, 'Ramp shape', (cue) =>
    cue.rampShape === rampShape ? cue : { ...cue, rampShape },
  )
