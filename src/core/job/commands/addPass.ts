import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { PassRecord } from '../../transfer/passRecord.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { MOST_PASSES } from '../limits.ts'

/** Puts the record of a transfer into the job. */
export const addPass = (job: Job, pass: PassRecord): Result<LabelledChange> => {
  if (!job.reels[pass.reel])
    return fail(problem('not-found', 'The reel of this pass is no longer in the job.'))
  if (Object.keys(job.passes).length >= MOST_PASSES)
    return fail(
      problem('too-large', `A job holds at most ${MOST_PASSES} passes; begin another job.`, {
        field: 'passes',
      }),
    )
  return ok({
    label: 'Record a transfer',
    change: { passes: { added: { [pass.id]: pass }, updated: {}, removed: {} } },
  })
}
