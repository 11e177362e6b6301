import { isXmlText } from '../../base/xmlWriter.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { cueLoss, type Loss, numbersWhere } from '../loss.ts'
import { sharedLosses } from '../sharedLosses.ts'

/** What an ASC CDL file cannot carry of this reel. */
export const lossesCcc = (job: Job, reelId: ReelId): readonly Loss[] => {
  const cues = cuesOfReel(job, reelId)
  return [
    {
      subject: 'Places',
      cues: [],
      says: `Where cues begin and end: a collection has grades only.`,
      done: `The cue-in timecode of each of the ${cues.length} cues stands in its description; the edit decision list carries the places.`,
    },
    ...cueLoss(
      'Notes',
      numbersWhere(cues, ({ note }) => !isXmlText(note)),
      (words) => `Control characters in the note of ${words}.`,
      'Each is written as U+FFFD.',
    ),
    ...sharedLosses(job, reelId),
  ]
}
