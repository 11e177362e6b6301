import { ok, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job, JobInfo } from '../job.ts'

/** Changes what holds for the whole job: its title and its tolerance. */
export const setJobInfo = (
  job: Job,
  edit: (info: JobInfo) => JobInfo,
  label = 'Job particulars',
): Result<LabelledChange> => {
  const before = job.info.job
  const after = edit(before)
  const isSame = before.title === after.title && before.tolerance === after.tolerance
  return ok({
    label,
    change: isSame ? {} : { info: { added: {}, updated: { job: [before, after] }, removed: {} } },
  })
}
