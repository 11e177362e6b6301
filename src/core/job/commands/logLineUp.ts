import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job, LineUp } from '../job.ts'
import { MOST_LINE_UPS, WORDS_LIMIT } from '../limits.ts'
import type { ReelId } from '../recordIds.ts'
import { setReel } from './setReel.ts'

/** Logs that the scanner was lined up for a reel: what was done, in words. */
export const logLineUp = (job: Job, id: ReelId, lineUp: LineUp): Result<LabelledChange> => {
  const says = lineUp.says.trim()
  if (says === '')
    return fail(
      problem('missing', 'A line-up is logged in words; write what was set and read.', {
        field: 'lineUps',
      }),
    )
  if (says.length > WORDS_LIMIT || (job.reels[id]?.lineUps.length ?? 0) >= MOST_LINE_UPS)
    return fail(
      problem(
        'too-large',
        `A reel holds at most ${MOST_LINE_UPS} line-ups of ${WORDS_LIMIT} characters each.`,
        { field: 'lineUps' },
      ),
    )
  return setReel(
    job,
    id,
    (reel) => ({ ...reel, lineUps: [...reel.lineUps, { at: lineUp.at, says }] }),
    'Log a line-up',
  )
}
