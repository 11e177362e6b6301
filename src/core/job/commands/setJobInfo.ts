import { problem } from '../../base/problem.ts'
import { fail, type Result, resultOf } from '../../base/result.ts'
import { checkHouseProfiles } from '../../tolerance/checkHouseProfiles.ts'
import { profileById, unknownTolerance } from '../../tolerance/findProfile.ts'
import type { LabelledChange } from '../history.ts'
import type { Job, JobInfo } from '../job.ts'
import { NAME_LIMIT } from '../limits.ts'

/**
 * Changes what holds for the whole job: its title (at most 1,000 characters), its tolerance and its
 * house profiles (`checkHouseProfiles`). A house profile that is in force cannot go.
 */
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
  const unfit = checkHouseProfiles(after.profiles)
  if (!profileById(after.tolerance, after.profiles))
    return fail(unknownTolerance(after.tolerance, after.profiles))
  const isSame = JSON.stringify(before) === JSON.stringify(after)
  return resultOf(
    {
      label,
      change: isSame ? {} : { info: { added: {}, updated: { job: [before, after] }, removed: {} } },
    },
    unfit,
  )
}
