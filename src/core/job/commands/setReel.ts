import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job, Reel } from '../job.ts'
import { NAME_LIMIT } from '../limits.ts'
import type { ReelId } from '../recordIds.ts'

/** Changes a reel's particulars (name, gauge, rate, timecode start, coding). */
export const setReel = (
  job: Job,
  id: ReelId,
  edit: (reel: Reel) => Reel,
  label = 'Reel particulars',
): Result<LabelledChange> => {
  const reel = job.reels[id]
  if (!reel) return fail(problem('not-found', 'This reel is no longer in the job.'))
  const edited = edit(reel)
  if (edited.name.trim() === '')
    return fail(problem('missing', 'A reel needs a name; type one.', { field: 'name' }))
  if (edited.name.length > NAME_LIMIT)
    return fail(
      problem('too-large', `A reel's name holds at most ${NAME_LIMIT} characters; shorten it.`, {
        field: 'name',
      }),
    )
  return ok({
    label,
    change: { reels: { added: {}, updated: { [id]: [reel, edited] }, removed: {} } },
  })
}
