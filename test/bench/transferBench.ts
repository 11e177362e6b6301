import { statSync, writeFileSync } from 'node:fs'
import { basename } from 'node:path'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'
import { BENCH_GRADE } from './benchGrade.ts'

/** Puts a job on a 1080p clip beside it: one cue, graded as the rows are. */
export const putBenchJob = (path: string, clip: string, frames: number): void => {
  const { media } = sampleReel()
  const reel = sampleReel({
    frames,
    media: { ...media, name: basename(clip), bytes: statSync(clip).size },
    lineUps: [{ at: '2026-01-05T08:00:00Z', says: 'Bars seen.' }],
  })
  const job = sampleJob([0], (cue) => ({ ...cue, grade: BENCH_GRADE }), reel)
  writeFileSync(path, writeJob(job))
}
