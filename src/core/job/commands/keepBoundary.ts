import type { Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { editCues } from './cueCommand.ts'

/** A person has looked at these boundaries and keeps them: they are no longer doubtful. */
export const keepBoundary = (job: Job, ids: readonly CueId[]): Result<LabelledChange> =>
  editCues(job, ids, 'Keep boundary', (cue) =>
    cue.boundary.confidence === 1 ? cue : { ...cue, boundary: { ...cue.boundary, confidence: 1 } },
  )
