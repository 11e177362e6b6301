import { gradeToCdl } from '../../colour/cdl.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { cueLoss, type Loss, numbersWhere } from '../loss.ts'
import { sharedLosses } from '../sharedLosses.ts'
import { edlDecimal } from './edlDecimal.ts'
import { edlReelNameIn } from './edlReelName.ts'
import { edlText } from './edlText.ts'

/** The most events a conventional list holds; longer ones are split. */
export const EVENT_LIMIT = 999

/** The longest title of a conventional list. */
export const TITLE_LIMIT = 70

/** What an edit decision list cannot carry of this reel. */
export const lossesEdl = (job: Job, reelId: ReelId): readonly Loss[] => {
  const reel = job.reels[reelId]
  if (!reel) return []
  const cues = cuesOfReel(job, reelId)
  const whole = (subject: string, says: string, done: string): Loss => ({
    subject,
    cues: [],
    says,
    done,
  })
  const name = edlReelNameIn(job, reelId)
  const { title } = job.info.job
  const isTitleWhole = edlText(title) === title.trim() && edlText(title).length <= TITLE_LIMIT
  return [
    ...cueLoss(
      'Decimals',
      numbersWhere(cues, ({ grade }) => {
        const cdl = gradeToCdl(grade)
        const values = [...cdl.slope, ...cdl.offset, ...cdl.power, cdl.saturation]
        return values.some((value) => Number(edlDecimal(value)) !== value)
      }),
      (words) => `More than six decimals of the numbers of ${words}.`,
      'They are rounded; the ASC CDL collection has them exactly.',
    ),
    ...(name === reel.name
      ? []
      : [
          whole(
            'Reel name',
            `The reel's full name “${reel.name}” in the event lines.`,
            `The event lines say ${name}, a comment has the rest.`,
          ),
        ]),
    ...(isTitleWhole
      ? []
      : [
          whole(
            'Title',
            `The whole title: a list takes ${TITLE_LIMIT} characters of plain ASCII.`,
            'It is shortened, and letters outside ASCII are written as ?.',
          ),
        ]),
    ...cueLoss(
      'Notes',
      numbersWhere(cues, ({ note }) => edlText(note) !== note.trim()),
      (words) => `Letters outside ASCII and line breaks in the note of ${words}.`,
      'Accents are dropped, other letters written as ?, and lines joined.',
    ),
    ...(cues.length > EVENT_LIMIT
      ? [
          whole(
            'One list',
            `One list: at most ${EVENT_LIMIT} events fit.`,
            `There are ${Math.ceil(cues.length / EVENT_LIMIT)} lists.`,
          ),
        ]
      : []),
    ...sharedLosses(job, reelId),
  ]
}
