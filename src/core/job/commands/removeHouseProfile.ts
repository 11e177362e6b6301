import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { setJobInfo } from './setJobInfo.ts'

/** Takes a house profile out of the job; not the one that the job is held to. */
export const removeHouseProfile = (job: Job, id: string): Result<LabelledChange> => {
  const { profiles, tolerance } = job.info.job
  if (!profiles.some((profile) => profile.id === id))
    return fail(problem('not-found', 'This house profile is no longer in the job.'))
  if (tolerance === id)
    return fail(
      problem('conflict', 'The job is held to this house profile; choose another tolerance first.'),
    )
  return setJobInfo(
    job,
    (info) => ({ ...info, profiles: profiles.filter((profile) => profile.id !== id) }),
    'Take out house profile',
  )
}
