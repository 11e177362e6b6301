import { isPlainBase } from '../film/filmBase.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { BoundaryFound, Cue, Foreign, ForeignFormat, HeldFrame, Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { IDENTITY_FRAMING, sameFraming } from '../picture/framing.ts'
import { cueLoss, type Loss, leftOut, numbersWhere, wholeLoss } from './loss.ts'

/** What a list of cues may carry besides their grades. */
export type CarriedSubject =
  | 'base'
  | 'framing'
  | 'ramps'
  | 'alternates'
  | 'scenes'
  | 'held'
  | 'agreement'
  | 'boundaries'
  | 'grade-names'
  | 'other-words'
  | 'particulars'

const GRADUAL: readonly BoundaryFound['kind'][] = ['dissolve', 'fade-out', 'fade-in', 'dip']

/** Whether a cue begins in a shot change that is not one frame beside another. */
export const isGradual = ({ boundary }: Cue): boolean => GRADUAL.includes(boundary.kind)

const LEFT_OUT = leftOut('Left out; the job file has it.')
const GOES_BACK = leftOut('Left out; it goes back out in the format it came in.')

/**
 * What of this reel is lost in a format that carries these subjects, in the order of the job.
 * `ownFormat`: the format whose own words, kept from a list that came in, go out with it.
 */
export const sharedLosses = (
  job: Job,
  reelId: ReelId,
  carries: ReadonlySet<CarriedSubject> = new Set(),
  ownFormat?: ForeignFormat,
): readonly Loss[] => {
  const cues = cuesOfReel(job, reelId)
  const reel = job.reels[reelId]
  const hasOther = (foreign: Foreign): boolean => foreign.some(({ format }) => format !== ownFormat)
  const held = Object.values<HeldFrame>(job.held).filter((each) => each.reel === reelId).length
  const losses: Readonly<Record<CarriedSubject, readonly Loss[]>> = {
    base: wholeLoss(
      reel !== undefined && !isPlainBase(reel.base),
      'Base',
      'The base, which makes video of the scan: the grades are right only on the picture after it.',
      leftOut('Left out; the job file and a process list (.clf) of each cue have it.'),
    ),
    framing: cueLoss(
      'Framing',
      numbersWhere(cues, ({ framing }) => !sameFraming(framing, IDENTITY_FRAMING)),
      (words) => `The framing of ${words}.`,
      LEFT_OUT,
    ),
    ramps: cueLoss(
      'Ramps',
      numbersWhere(cues, ({ ramp }) => ramp > 0),
      (words) => `The ramp of ${words}: a reader changes the grade on the cue's first frame.`,
      LEFT_OUT,
    ),
    alternates: cueLoss(
      'Alternates',
      numbersWhere(cues, (cue) => cue.alternates.length > 0),
      (words) => `The alternates of ${words}.`,
      leftOut('Left out; only the grade in force goes out.'),
    ),
    scenes: cueLoss(
      'Scene marks',
      numbersWhere(cues, ({ scene }) => scene !== ''),
      (words) => `The scene mark of ${words}.`,
      LEFT_OUT,
    ),
    held: wholeLoss(
      held > 0,
      'Held frames',
      held === 1 ? 'The held frame.' : `The ${held} held frames.`,
      LEFT_OUT,
    ),
    agreement: cueLoss(
      'Agreement',
      numbersWhere(cues, ({ answers }) => answers.length > 0),
      (words) => `The agreement on ${words}.`,
      LEFT_OUT,
    ),
    boundaries: cueLoss(
      'Shot changes',
      numbersWhere(cues, isGradual),
      (words) => `The dissolve or fade at the beginning of ${words}.`,
      LEFT_OUT,
    ),
    'grade-names': cueLoss(
      'Grade names',
      numbersWhere(cues, ({ gradeName }) => gradeName !== ''),
      (words) => `The name of the grade of ${words}.`,
      LEFT_OUT,
    ),
    'other-words': [
      ...cueLoss(
        'Words of other lists',
        numbersWhere(cues, ({ foreign }) => hasOther(foreign)),
        (words) => `What lists of other formats said of ${words} and is kept.`,
        GOES_BACK,
      ),
      ...wholeLoss(
        reel !== undefined && hasOther(reel.foreign),
        'Words of other lists',
        'What lists of other formats said as a whole.',
        GOES_BACK,
      ),
    ],
    particulars: wholeLoss(
      true,
      'Particulars',
      'The tolerance the job is held to, and the particulars of the reel and its scan.',
      LEFT_OUT,
    ),
  }
  return Object.entries(losses).flatMap(([subject, each]) =>
    carries.has(subject as CarriedSubject) ? [] : each,
  )
}
