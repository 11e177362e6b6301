import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { editCues } from './cueCommand.ts'

/** Sets over how many frames (0…10,000) values move from the cue before; 0 = on the frame. */
export const setRamp = (job: Job, ids: readonly CueId[], ramp: number): Result<LabelledChange> => {
  if (!Number.isInteger(ramp) || ramp < 0 || ramp > 10_000)
    return fail(
      problem('out-of-range', 'A ramp is a whole number of frames from 0 to 10,000.', {
        field: 'ramp',
      }),
    )
  return editCues(job, ids, 'Ramp', (cue) => (cue.ramp === ramp ? cue : { ...cue, ramp }))
}
