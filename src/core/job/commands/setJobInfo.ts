import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { toleranceProfile, unknownTolerance } from '../../tolerance/profile.ts'
import type { LabelledChange } from '../history.ts'
import type { Job, JobInfo } from '../job.ts'
import { NAME_LIMIT } from '../limits.ts'

/** Changes what holds for the whole job: its title (at most 1,000 characters) and its tolerance. */
export const setJobInfo = (
  job: Job,
  edit: (info: JobInfo) => JobInfo,
  label = 'Job particulars',
): Result<LabelledChange> => {
  const before = job.info.job
  const after = edit(before)
  if (after.title.length > NAME_LIMIT)
    return fail(
      problem('too-large', `A title holds at most ${NAME_LIMIT} characters; shorten it.`, {
        field: 'title',
      }),
    )
  if (!toleranceProfile(after.tolerance)) return fail(unknownTolerance(after.tolerance))
  const isSame = before.title === after.title && before.tolerance === after.tolerance
  return ok({
    label,
    change: isSame ? {} : { info: { added: {}, updated: { job: [before, after] }, removed: {} } },
  })
}
