import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { ChecklistName, Override } from '../../transfer/override.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { WORDS_LIMIT } from '../limits.ts'
import type { ReelId } from '../recordIds.ts'
import { setReel } from './setReel.ts'

/** Keeps a written reason to transfer although a check is not right, in place of one before. */
export const setOverride = (job: Job, id: ReelId, override: Override): Result<LabelledChange> => {
  const reason = override.reason.trim()
  if (reason === '')
    return fail(problem('missing', 'A reason has words; write why.', { field: 'reason' }))
  if (reason.length > WORDS_LIMIT)
    return fail(
      problem('too-large', `A reason holds at most ${WORDS_LIMIT} characters; shorten it.`, {
        field: 'reason',
      }),
    )
  return setReel(
    job,
    id,
    (reel) => ({
      ...reel,
      overrides: [
        ...reel.overrides.filter(({ check }) => check !== override.check),
        { ...override, reason },
      ],
    }),
    'Reason on the checklist',
  )
}

/** Takes the reason of a check back. */
export const dropOverride = (job: Job, id: ReelId, check: ChecklistName): Result<LabelledChange> =>
  setReel(
    job,
    id,
    (reel) =>
      reel.overrides.some((each) => each.check === check)
        ? { ...reel, overrides: reel.overrides.filter((each) => each.check !== check) }
        : reel,
    'Take a reason back',
  )
