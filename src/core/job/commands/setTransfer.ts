import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import { LONGEST_HEAD_PART, type TransferSettings } from '../../transfer/transferSettings.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import type { ReelId } from '../recordIds.ts'
import { setReel } from './setReel.ts'

/** Changes how a reel is transferred; parts of the head are whole seconds, 0…60. */
export const setTransfer = (
  job: Job,
  id: ReelId,
  change: Partial<TransferSettings>,
): Result<LabelledChange> => {
  for (const [part, seconds] of Object.entries(change.head ?? {}))
    if (!Number.isInteger(seconds) || seconds < 0 || seconds > LONGEST_HEAD_PART)
      return fail(
        problem(
          'out-of-range',
          `Bars, slate and leader take whole seconds, 0 to ${LONGEST_HEAD_PART}; give one of those.`,
          { field: `transfer.head.${part}` },
        ),
      )
  return setReel(
    job,
    id,
    (reel) => {
      const transfer = { ...reel.transfer, ...change }
      const isSame = JSON.stringify(transfer) === JSON.stringify(reel.transfer)
      return isSame ? reel : { ...reel, transfer }
    },
    'How the reel is transferred',
  )
}
