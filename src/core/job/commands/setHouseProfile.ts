import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { ToleranceProfile } from '../../tolerance/profile.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { setJobInfo } from './setJobInfo.ts'

/** Changes the name or the numbers of a house profile; its id stays. */
export const setHouseProfile = (
  job: Job,
  id: string,
  edit: (profile: ToleranceProfile) => ToleranceProfile,
  label = 'House profile',
): Result<LabelledChange> =>
  job.info.job.profiles.some((profile) => profile.id === id)
    ? setJobInfo(
        job,
        (info) => ({
          ...info,
          profiles: info.profiles.map((each) => (each.id === id ? { ...edit(each), id } : each)),
        }),
        label,
      )
    : fail(problem('not-found', 'This house profile is no longer in the job.'))
