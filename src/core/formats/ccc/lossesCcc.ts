import { isXmlText } from '../../base/xmlWriter.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { cueWords, numbersWhere, sharedLosses } from '../sharedLosses.ts'

/** What an ASC CDL collection cannot carry of this reel, one sentence each. */
export const lossesCcc = (job: Job, reelId: ReelId): readonly string[] => {
  const cues = cuesOfReel(job, reelId)
  const losses = [
    `Where cues begin and end: a collection has grades only. The cue-in timecode of each of the ${cues.length} cues stands in its description; the edit decision list carries the places.`,
  ]
  const unwritable = numbersWhere(cues, ({ note }) => !isXmlText(note))
  if (unwritable.length > 0)
    losses.push(`Control characters in the note of ${cueWords(unwritable)}.`)
  return [...losses, ...sharedLosses(job, reelId)]
}
