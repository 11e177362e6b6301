import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { sharedLosses } from '../sharedLosses.ts'

/** What an ASC CDL collection cannot carry of this reel, one sentence each. */
export const lossesCcc = (job: Job, reelId: ReelId): readonly string[] => {
  const count = cuesOfReel(job, reelId).length
  return [
    `Where cues begin and end: a collection has grades only. The cue-in timecode of each of the ${count} cues stands in its description; the edit decision list carries the places.`,
    ...sharedLosses(job, reelId),
  ]
}
