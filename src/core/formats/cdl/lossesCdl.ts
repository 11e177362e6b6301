import { isXmlText } from '../../base/xmlWriter.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { cueLoss, inPart, type Loss, leftOut, numbersWhere, wholeLoss } from '../loss.ts'
import { sharedLosses } from '../sharedLosses.ts'
import { keptOfCue, keptOfReel } from './cdlWords.ts'
import { correctionIds } from './correctionIds.ts'

/** What any ASC CDL file cannot carry of this reel. */
export const lossesCdl = (job: Job, reelId: ReelId): readonly Loss[] => {
  const reel = job.reels[reelId]
  if (!reel) return []
  const cues = cuesOfReel(job, reelId)
  return [
    ...wholeLoss(
      true,
      'Places',
      'Where cues begin and end: ASC CDL has grades only.',
      inPart(
        `The cue-in timecode of each of the ${cues.length} cues stands in its description; the edit decision list carries the places.`,
      ),
    ),
    ...cueLoss(
      'Notes',
      numbersWhere(cues, ({ note }) => !isXmlText(note)),
      (words) => `Control characters in the note of ${words}.`,
      inPart('Each is written as U+FFFD.'),
    ),
    ...cueLoss(
      'Ids',
      correctionIds(reel, cues).changed,
      (words) => `The id that ${words} came with: it is no XML ID, or another cue has it as well.`,
      inPart('The correction has an id made of reel and cue; the job file has the other.'),
    ),
    ...sharedLosses(job, reelId, new Set(), 'cdl'),
  ]
}

/** A collection has no decisions besides: it cannot tell what was said of them. */
export const lossesCcc = (job: Job, reelId: ReelId): readonly Loss[] => {
  const kept = cuesOfReel(job, reelId).map(({ foreign }) => keptOfCue(foreign))
  const numbersOf = (isLost: (index: number) => boolean): readonly number[] =>
    kept.flatMap((_, index) => (isLost(index) ? [index + 1] : []))
  return [
    ...lossesCdl(job, reelId),
    ...cueLoss(
      'Media references',
      numbersOf((i) => (kept[i]?.mediaRefs.length ?? 0) > 0),
      (words) => `Which picture a list named for ${words}.`,
      leftOut('Left out; the decision list (.cdl) carries it.'),
    ),
    ...cueLoss(
      'Decisions',
      numbersOf((i) => (kept[i]?.decision.length ?? 0) > 0),
      (words) => `That descriptions of ${words} were of the decision and not of its correction.`,
      inPart('They stand in the correction; the decision list (.cdl) tells them apart.'),
    ),
  ]
}

/** Single corrections cannot carry either what was said of the list as a whole. */
export const lossesCc = (job: Job, reelId: ReelId): readonly Loss[] => {
  const words = keptOfReel(job.reels[reelId]?.foreign ?? [])
  return [
    ...lossesCcc(job, reelId),
    ...wholeLoss(
      words.length > 0,
      'Descriptions',
      'What a list read before said as a whole.',
      leftOut('Left out; the collection (.ccc) and the decision list (.cdl) carry it.'),
    ),
  ]
}
