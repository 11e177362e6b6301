import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { cueLoss, inPart, type Loss, numbersWhere } from '../loss.ts'
import { sharedLosses } from '../sharedLosses.ts'
import { isWholeText } from './wholeText.ts'

/** What a ledger as comma-separated values cannot carry of this reel. */
export const lossesCsv = (job: Job, reelId: ReelId): readonly Loss[] => {
  const cues = cuesOfReel(job, reelId)
  return [
    ...cueLoss(
      'Alternates',
      numbersWhere(cues, ({ alternates }) => alternates.length > 0),
      (words) => `The numbers of the alternates of ${words}.`,
      inPart('Their names go out; the job file has the numbers.'),
    ),
    ...cueLoss(
      'What was agreed',
      numbersWhere(cues, ({ answers }) => answers.length > 0),
      (words) => `Who said what of ${words}, when, and of which pictures.`,
      inPart(
        'The column says how each cue stands, to be read; a list read back changes no agreement.',
      ),
    ),
    ...cueLoss(
      'Broken characters',
      numbersWhere(cues, ({ note, scene, gradeName, alternates }) =>
        [note, scene, gradeName, ...alternates.map(({ name }) => name)].some(
          (text) => !isWholeText(text),
        ),
      ),
      (words) => `Halves of characters in the words of ${words}, which UTF-8 cannot hold.`,
      inPart('Each is written as U+FFFD.'),
    ),
    ...sharedLosses(
      job,
      reelId,
      new Set([
        ...(['framing', 'ramps', 'alternates', 'scenes', 'agreement'] as const),
        ...(['boundaries', 'grade-names'] as const),
      ]),
    ),
  ]
}
