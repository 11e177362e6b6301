import type { PackRecord } from '../../agreement/answer.ts'
import { cuesOfReel } from '../../job/cueList.ts'
import type { HeldFrame, Job, Reel } from '../../job/job.ts'
import type { PassRecord } from '../../transfer/passRecord.ts'
import { JOB_VERSION } from './migrations.ts'

/**
 * A job as the text of a job file: JSON with two spaces, reels by id and cues by reel and first
 * frame, so that the same job is always the same text and two versions compare line by line.
 */
export const writeJob = (job: Job): string => {
  const reels = Object.values<Reel>(job.reels).toSorted((a, b) => (a.id < b.id ? -1 : 1))
  const cues = reels.flatMap((reel) => cuesOfReel(job, reel.id))
  const file = {
    format: 'reelwright-job',
    version: JOB_VERSION,
    info: job.info.job,
    reels,
    cues,
    held: Object.values<HeldFrame>(job.held).toSorted((a, b) => (a.id < b.id ? -1 : 1)),
    passes: Object.values<PassRecord>(job.passes).toSorted((a, b) => (a.id < b.id ? -1 : 1)),
    packs: Object.values<PackRecord>(job.packs).toSorted((a, b) => (a.id < b.id ? -1 : 1)),
  }
  return `${JSON.stringify(file, undefined, 2)}\n`
}
