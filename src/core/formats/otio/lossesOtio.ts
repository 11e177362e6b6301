import { isPlainBase } from '../../film/filmBase.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import { foreignOf } from '../../job/foreignOf.ts'
import type { Foreign, HeldFrame, Job } from '../../job/job.ts'
import type { ReelId } from '../../job/recordIds.ts'
import { IDENTITY_FRAMING, sameFraming } from '../../picture/framing.ts'
import { canDropFrames } from '../../time/timecode.ts'
import {
  cueLoss,
  inPart,
  keptUnapplied,
  type Loss,
  leftOut,
  numbersWhere,
  wholeLoss,
} from '../loss.ts'
import { keptDocument, keptParts } from './keptParts.ts'
import { withWholeCharacters } from './ourMetadata.ts'

const IN_METADATA = keptUnapplied(
  'It stands in the metadata under “reelwright”, which other programs keep but do not apply.',
)

const hasOther = (foreign: Foreign): boolean => foreign.some(({ format }) => format !== 'otio')

const isUnread = (foreign: Foreign, read: unknown): boolean =>
  foreignOf(foreign, 'otio') !== undefined && read === undefined

/** What an OpenTimelineIO file cannot make other programs do, and what it does not carry. */
export const lossesOtio = (job: Job, reelId: ReelId): readonly Loss[] => {
  const reel = job.reels[reelId]
  if (!reel) return []
  const cues = cuesOfReel(job, reelId)
  const held = Object.values<HeldFrame>(job.held).filter((each) => each.reel === reelId).length
  return [
    ...wholeLoss(
      !isPlainBase(reel.base),
      'Base',
      'Other programs do not apply the base, which makes video of the scan: the grades are right only on the picture after it.',
      IN_METADATA,
    ),
    ...cueLoss(
      'Framing',
      numbersWhere(cues, ({ framing }) => !sameFraming(framing, IDENTITY_FRAMING)),
      (words) => `Other programs do not apply the framing of ${words}.`,
      IN_METADATA,
    ),
    ...cueLoss(
      'Ramps',
      numbersWhere(cues, ({ ramp }) => ramp > 0),
      (words) =>
        `Other programs do not apply the ramp of ${words}: they change the grade on the cue's first frame.`,
      IN_METADATA,
    ),
    ...cueLoss(
      'Alternates',
      numbersWhere(cues, (cue) => cue.alternates.length > 0),
      (words) => `Other programs show only the grade in force of ${words}.`,
      IN_METADATA,
    ),
    ...cueLoss(
      'Scene marks',
      numbersWhere(cues, ({ scene }) => scene !== ''),
      (words) => `Other programs do not show the scene mark of ${words}.`,
      IN_METADATA,
    ),
    ...cueLoss(
      'Agreement',
      numbersWhere(cues, ({ answers }) => answers.length > 0),
      (words) => `The agreement on ${words} goes out as a statement: it is not read back.`,
      IN_METADATA,
    ),
    ...wholeLoss(
      held > 0,
      'Held frames',
      `${held === 1 ? 'The held frame goes' : `The ${held} held frames go`} out as markers: they are not read back as held frames.`,
      inPart('Each marker has its name and place, and its grade and framing in its metadata.'),
    ),
    ...wholeLoss(
      true,
      'Particulars',
      'Other programs do not use the tolerance the job is held to, nor the particulars of the reel and its scan.',
      IN_METADATA,
    ),
    ...wholeLoss(
      reel.isDropFrame && canDropFrames(reel.rate),
      'Drop frames',
      'Whether labels of timecode drop frames: times are counts of frames here.',
      IN_METADATA,
    ),
    ...cueLoss(
      'Half characters',
      numbersWhere(cues, (cue) => {
        const own = { ...cue, foreign: [] }
        return withWholeCharacters(own) !== own
      }),
      (words) => `Halves of characters in the texts of ${words}, which strict readers refuse.`,
      inPart('Each is written as U+FFFD.'),
    ),
    ...cueLoss(
      'Words of other lists',
      numbersWhere(
        cues,
        ({ foreign }) => hasOther(foreign) || isUnread(foreign, keptParts(foreign)),
      ),
      (words) => `What lists of other formats said of ${words} and no cue has a field for.`,
      leftOut('Left out; the job file has it.'),
    ),
    ...wholeLoss(
      hasOther(reel.foreign) || isUnread(reel.foreign, keptDocument(reel.foreign)),
      'Words of other lists',
      'What lists of other formats said as a whole.',
      leftOut('Left out; the job file has it.'),
    ),
  ]
}
