import { agreementOf } from '../../agreement/agreementOf.ts'
import { PRINT_BASE, sameBase } from '../../film/filmBase.ts'
import { NO_PARTICULARS } from '../../film/particulars.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { Cue, Job, Reel } from '../../job/job.ts'
import { EBU_R103_V3 } from '../../tolerance/profile.ts'
import { INITIAL_TRANSFER } from '../../transfer/transferSettings.ts'
import { cueLoss, inPart, type Loss, leftOut, numbersWhere, wholeLoss } from '../loss.ts'
import { JOB_VERSION, migrateDown } from './migrations.ts'
import { writeJob } from './writeJob.ts'

const LEFT_OUT = leftOut('Left out; a file of the newest version has it.')

/** What of a reel each step down to an earlier version loses, by the version that is left. */
const lossesLeaving = (job: Job, reel: Reel): ReadonlyMap<number, readonly Loss[]> => {
  const cues = cuesOfReel(job, reel.id)
  const { tolerance, profiles } = job.info.job
  const held = Object.values(job.held).filter((each) => each.reel === reel.id).length
  const where = (subject: string, what: string, holds: (cue: Cue) => boolean, done = LEFT_OUT) =>
    cueLoss(subject, numbersWhere(cues, holds), (words) => `${what} ${words}.`, done)
  const whole = (isLost: boolean, subject: string, says: string, done = LEFT_OUT) =>
    wholeLoss(isLost, subject, says, done)
  const passes = Object.values(job.passes).filter((each) => each.reel === reel.id).length
  const isTransferSet = JSON.stringify(reel.transfer) !== JSON.stringify(INITIAL_TRANSFER)
  const reasons = reel.overrides.length
  const hasParticulars = JSON.stringify(reel.particulars) !== JSON.stringify(NO_PARTICULARS)
  return new Map<number, readonly Loss[]>([
    [
      8,
      [
        ...whole(hasParticulars, 'Film', 'What was found in the can.'),
        ...whole(reel.guide !== null, 'Guide track', 'The guide track and where it lies.'),
        ...whole(
          reel.gauge === 'super16',
          'Gauge',
          'That the film is Super 16.',
          inPart('It is 16 mm.'),
        ),
      ],
    ],
    [
      7,
      [
        ...where(
          'Agreement',
          'Who said what and when, the lines drawn, and what else was agreed than grade and framing of',
          ({ answers }) => answers.length > 0,
          inPart('How they stand is kept.'),
        ),
        ...whole(reasons > 0, 'Checklist', 'Which cues the reasons on the checklist are about.'),
        ...whole(
          Object.keys(job.packs).length > 0,
          'Agreement',
          'The review packs that were made.',
        ),
      ],
    ],
    [
      6,
      [
        ...whole(
          isTransferSet || reasons > 0,
          'Transfer',
          'How the reel is transferred, and the reasons given on its checklist.',
        ),
        ...whole(passes > 0, 'Passes', 'The record of the passes that were made.'),
        ...whole(reel.lineUps.length > 0, 'Line-up', 'The line-ups logged for the reel.'),
        ...whole(reel.media.checksum !== null, 'Scan', 'The checksum of the scan.'),
        ...whole(
          job.info.job.asksAgreement,
          'Agreement',
          'That every cue is to be agreed before a transfer.',
        ),
      ],
    ],
    [
      5,
      [
        ...whole(reel.base.list !== null, 'Base list', 'The process list of the base.'),
        ...where('Other lists', 'What other lists said of', ({ foreign }) => foreign.length > 0),
        ...whole(reel.foreign.length > 0, 'Other lists', 'What other lists said of the reel.'),
      ],
    ],
    [
      4,
      [
        ...where(
          'Ramps',
          'The eased shape of the ramp of',
          ({ ramp, rampShape }) => ramp > 0 && rampShape === 'eased',
          inPart('The ramp is linear.'),
        ),
        ...where('Alternates', 'The alternates of', ({ alternates }) => alternates.length > 0),
        ...where('Grade names', 'The name of the grade of', ({ gradeName }) => gradeName !== ''),
        ...where('Scene marks', 'The scene mark of', ({ scene }) => scene !== ''),
        ...where(
          'Agreement',
          'What was agreed on, and changed since, of',
          (cue) => agreementOf(job, cue) === 'changed',
          inPart('They are open.'),
        ),
        ...whole(
          held > 0,
          'Held frames',
          `The ${held === 1 ? 'held frame' : `${held} held frames`}.`,
        ),
      ],
    ],
    [
      3,
      where(
        'Framing',
        'Rotation, squeeze and blanking of',
        ({ framing: { rotation, squeeze, blanking } }) =>
          rotation !== 0 || squeeze !== 1 || blanking !== 0,
      ),
    ],
    [
      2,
      [
        ...whole(
          !sameBase({ ...reel.base, list: null }, PRINT_BASE),
          'Base',
          'The base, which makes video of the scan.',
        ),
        ...whole(
          profiles.length > 0 || tolerance !== EBU_R103_V3.id,
          'Tolerance',
          'The tolerance the job is held to, and its house profiles.',
          inPart('It is held to EBU R 103 v3.'),
        ),
      ],
    ],
  ])
}

/** A job as the text of a file of an earlier version (from 1), and what that cannot carry. */
export const writeJobAt = (
  job: Job,
  version: number,
): { readonly text: string; readonly losses: readonly Loss[] } => {
  const file = migrateDown(JSON.parse(writeJob(job)), version)
  const losses = Object.values<Reel>(job.reels).flatMap((reel) =>
    [...lossesLeaving(job, reel)].flatMap(([leaving, each]) =>
      leaving > version && leaving <= JOB_VERSION ? each : [],
    ),
  )
  return { text: `${JSON.stringify(file, undefined, 2)}\n`, losses }
}
