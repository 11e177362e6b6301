import { isXmlText } from '../../base/xmlWriter.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { cueLoss, inPart, type Loss, numbersWhere, rounded, wholeLoss } from '../loss.ts'
import { sharedLosses } from '../sharedLosses.ts'
import { baseSteps } from './baseSteps.ts'
import { hasBaseApart } from './writeClf.ts'

/** What the process lists of a reel's cues cannot carry. */
export const lossesClf = (job: Job, reelId: ReelId): readonly Loss[] => {
  const reel = job.reels[reelId]
  if (!reel) return []
  const cues = cuesOfReel(job, reelId)
  return [
    ...wholeLoss(
      true,
      'Places',
      'Where cues begin and end: a process list has colour only.',
      inPart(
        'The cue-in timecode of each cue stands in the description of its file; the edit decision list carries the places.',
      ),
    ),
    ...wholeLoss(
      baseSteps(reel.base).length > 0,
      'Base',
      'The numbers of the base: it stands there as tables.',
      rounded(
        'The tables are within a quarter of a 10-bit code of it; the job file has the numbers.',
      ),
    ),
    ...wholeLoss(
      hasBaseApart(job, reel),
      'One file a cue',
      'The base in the file of every cue: together they would be too large.',
      inPart('It has a file of its own, which goes before that of every cue.'),
    ),
    ...cueLoss(
      'Notes',
      numbersWhere(cues, ({ note }) => !isXmlText(note)),
      (words) => `Control characters in the note of ${words}.`,
      inPart('Each is written as U+FFFD.'),
    ),
    ...sharedLosses(job, reelId, new Set(['base'])),
  ]
}
