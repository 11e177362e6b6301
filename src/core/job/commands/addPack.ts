import type { PackRecord } from '../../agreement/answer.ts'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { MOST_PACKS } from '../limits.ts'

/** Keeps the record of a review pack, so that its answers are known again. */
export const addPack = (job: Job, pack: PackRecord): Result<LabelledChange> =>
  Object.keys(job.packs).length >= MOST_PACKS
    ? fail(
        problem('too-large', `A job knows at most ${MOST_PACKS} packs; begin another job.`, {
          field: 'packs',
        }),
      )
    : ok({
        label: 'Make a review pack',
        change: { packs: { added: { [pack.id]: pack }, updated: {}, removed: {} } },
      })
