import { isPlainBase } from '../film/filmBase.ts'
import { cuesOfReel } from '../job/cueList.ts'
import type { HeldFrame, Job } from '../job/job.ts'
import type { ReelId } from '../job/recordIds.ts'
import { IDENTITY_FRAMING, sameFraming } from '../picture/framing.ts'
import { cueLoss, type Loss, numbersWhere } from './loss.ts'

/** What a list of cues may carry besides their grades. */
export type CarriedSubject =
  | 'base'
  | 'framing'
  | 'ramps'
  | 'alternates'
  | 'scenes'
  | 'held'
  | 'agreement'
  | 'particulars'

const LEFT_OUT = 'Left out; the job file has it.'

/** What of this reel is lost in a format that carries these subjects, in the order of the job. */
export const sharedLosses = (
  job: Job,
  reelId: ReelId,
  carries: ReadonlySet<CarriedSubject> = new Set(),
): readonly Loss[] => {
  const cues = cuesOfReel(job, reelId)
  const reel = job.reels[reelId]
  const held = Object.values<HeldFrame>(job.held).filter((each) => each.reel === reelId).length
  const whole = (subject: string, says: string, done = LEFT_OUT): readonly Loss[] => [
    { subject, cues: [], says, done },
  ]
  const losses: Readonly<Record<CarriedSubject, readonly Loss[]>> = {
    base:
      reel && !isPlainBase(reel.base)
        ? whole(
            'Base',
            'The base, which makes video of the scan: the grades are right only on the picture after it.',
            'Left out; the job file and a process list (.clf) of each cue have it.',
          )
        : [],
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
      'Only the grade in force goes out.',
    ),
    scenes: cueLoss(
      'Scene marks',
      numbersWhere(cues, ({ scene }) => scene !== ''),
      (words) => `The scene mark of ${words}.`,
      LEFT_OUT,
    ),
    held:
      held > 0
        ? whole('Held frames', held === 1 ? 'The held frame.' : `The ${held} held frames.`)
        : [],
    agreement: cueLoss(
      'Agreement',
      numbersWhere(cues, ({ agreement }) => agreement !== 'open'),
      (words) => `The agreement on ${words}.`,
      LEFT_OUT,
    ),
    particulars: whole(
      'Particulars',
      'The tolerance the job is held to, and the particulars of the reel and its scan.',
    ),
  }
  return Object.entries(losses).flatMap(([subject, each]) =>
    carries.has(subject as CarriedSubject) ? [] : each,
  )
}
