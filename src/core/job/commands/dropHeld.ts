import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { HeldId } from '../recordIds.ts'

/** Takes a held frame out of the job. */
export const dropHeld = (job: Job, id: HeldId): Result<LabelledChange> => {
  const held = job.held[id]
  return held
    ? ok({
        label: 'Drop held frame',
        change: { held: { added: {}, updated: {}, removed: { [id]: held } } },
      })
    : fail(problem('not-found', 'This held frame is no longer in the job.'))
}
