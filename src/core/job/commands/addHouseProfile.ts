import type { Result } from '../../base/result.ts'
import { plainName, profilesWith } from '../../tolerance/findProfile.ts'
import type { ToleranceProfile } from '../../tolerance/profile.ts'
import type { LabelledChange } from '../history.ts'
import type { Job } from '../job.ts'
import { setJobInfo } from './setJobInfo.ts'

/** Makes a house profile with the numbers of `from` and a name of its own; the job is held to it. */
export const addHouseProfile = (
  job: Job,
  from: ToleranceProfile,
  id: string,
): Result<LabelledChange> => {
  const taken = new Set(profilesWith(job.info.job.profiles).map(({ name }) => plainName(name)))
  let number = 1
  while (taken.has(plainName(`House rule ${number}`))) number++
  const profile = {
    ...from,
    id,
    name: `House rule ${number}`,
    source: `House rule of this job, made from ${from.name}`,
  }
  return setJobInfo(
    job,
    (info) => ({ ...info, profiles: [...info.profiles, profile], tolerance: id }),
    'Make house profile',
  )
}
