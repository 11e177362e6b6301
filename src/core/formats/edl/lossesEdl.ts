import { gradeToCdl } from '../../colour/cdl.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import { foreignOf } from '../../job/foreignOf.ts'
import type { Cue, Job, Reel } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { nominalFramesPerSecond } from '../../time/rate.ts'
import {
  cueLoss,
  inPart,
  keptUnapplied,
  type Loss,
  leftOut,
  numbersWhere,
  rounded,
  wholeLoss,
} from '../loss.ts'
import { isGradual, sharedLosses } from '../sharedLosses.ts'
import { rateWords } from './edlCounting.ts'
import { edlDecimal } from './edlDecimal.ts'
import { fullReelName } from './edlEventLines.ts'
import { readEdlForeign } from './edlForeign.ts'
import { edlReelNameIn } from './edlReelName.ts'
import { edlLinesOf } from './edlText.ts'
import { EVENT_LIMIT, isTitleWhole, TITLE_LIMIT } from './edlTitle.ts'

const hasMoreDecimals = ({ grade }: Cue): boolean => {
  const { slope, offset, power, saturation } = gradeToCdl(grade)
  return [...slope, ...offset, ...power, saturation].some(
    (value) => Number(edlDecimal(value)) !== value,
  )
}

const hasUnwritten = ({ foreign }: Cue | Reel): boolean =>
  (readEdlForeign(foreignOf(foreign, 'edl') ?? '').notTaken ?? []).length > 0

const USUAL_COUNTS = [24, 25, 30, 50, 60]

const rateLoss = ({ rate }: Reel): readonly Loss[] => {
  const count = nominalFramesPerSecond(rate)
  const words = rateWords(rate)
  return wholeLoss(
    true,
    'Rate',
    `The rate of ${words} frames a second: times are labels that count to ${count - 1}.`,
    inPart(
      USUAL_COUNTS.includes(count)
        ? 'A FRAME RATE comment says it; set the program that reads the list to it.'
        : `A FRAME RATE comment says it, but few programs count ${count}; place events by frames there.`,
    ),
  )
}

const reelNameLoss = (job: Job, reel: Reel): readonly Loss[] => {
  const name = edlReelNameIn(job, reel.id)
  const full = fullReelName(reel)
  const inComment =
    full === reel.name
      ? 'a FULL REEL NAME comment has the whole'
      : `a FULL REEL NAME comment has ${full}`
  return wholeLoss(
    name !== reel.name,
    'Reel name',
    `The reel's full name “${reel.name}” in the event lines.`,
    inPart(
      full === ''
        ? `The event lines and the names of clips say ${name}.`
        : `The event lines say ${name}, ${inComment}.`,
    ),
  )
}

/** What only this program reads again, though the list says it. */
const commentLosses = (cues: readonly Cue[]): readonly Loss[] => [
  ...cueLoss(
    'Ramps',
    numbersWhere(cues, ({ ramp }) => ramp > 0),
    (words) => `The ramp of ${words}, to other readers: they change the grade on the first frame.`,
    keptUnapplied(
      'A RAMP comment has its frames and shape, which other readers keep but do not apply; Reelwright reads it again.',
    ),
  ),
  ...cueLoss(
    'Notes',
    numbersWhere(cues, ({ note }) => edlLinesOf(note) !== note.trim()),
    (words) => `Letters outside ASCII and repeated blanks in the note of ${words}.`,
    inPart('Accents are dropped, other letters written as ?, and blanks joined.'),
  ),
]

const UNWRITTEN = leftOut(
  'Left out, so that no reader takes them for the grade; the job file has them.',
)

/** What other lists said that is not written back. */
const earlierLosses = (cues: readonly Cue[], reel: Reel): readonly Loss[] => [
  ...cueLoss(
    'Words of other lists',
    numbersWhere(cues, hasUnwritten),
    (words) => `Grades and notes that another list gave ${words} and that could not be taken.`,
    UNWRITTEN,
  ),
  ...wholeLoss(
    hasUnwritten(reel),
    'Words of other lists',
    'Grades and notes that another list had above its first event.',
    UNWRITTEN,
  ),
]

/** What an edit decision list cannot carry of this reel. */
export const lossesEdl = (job: Job, reelId: ReelId): readonly Loss[] => {
  const reel = job.reels[reelId]
  if (!reel) return []
  const cues = cuesOfReel(job, reelId)
  const parts = Math.max(1, Math.ceil(cues.length / EVENT_LIMIT))
  return [
    ...cueLoss(
      'Decimals',
      numbersWhere(cues, hasMoreDecimals),
      (words) => `More than six decimals of the numbers of ${words}.`,
      rounded('They are rounded; the ASC CDL collection has them exactly.'),
    ),
    ...reelNameLoss(job, reel),
    ...wholeLoss(
      !isTitleWhole(job, reelId, parts),
      'Title',
      `The whole title: a list takes ${TITLE_LIMIT} characters of plain ASCII.`,
      inPart('It is shortened, and letters outside ASCII are written as ?.'),
    ),
    ...rateLoss(reel),
    ...cueLoss(
      'Shot changes',
      numbersWhere(cues, isGradual),
      (words) => `The dissolve or fade at the beginning of ${words}.`,
      leftOut(
        'Left out: every event is a cut on its first frame; the job file has the kind of shot change.',
      ),
    ),
    ...commentLosses(cues),
    ...earlierLosses(cues, reel),
    ...wholeLoss(
      parts > 1,
      'One list',
      `One list: at most ${EVENT_LIMIT} events fit.`,
      inPart(`There are ${parts} lists, numbered in their titles.`),
    ),
    ...sharedLosses(job, reelId, new Set(['ramps', 'boundaries']), 'edl'),
  ]
}
