import { copyFileSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { basename, join, resolve } from 'node:path'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import type { Cue, Job, Reel } from '../../src/core/job/job.ts'
import { rate } from '../../src/core/time/rate.ts'
import {
  INITIAL_TRANSFER,
  type TransferSettings,
} from '../../src/core/transfer/transferSettings.ts'
import { sampleJob, sampleReel } from './sampleJob.ts'

/** A clip of 60 numbered frames of 128×96, three of them between references. */
export const NUMBERED_CLIP = resolve(import.meta.dirname, '../media/numbered/h264-bframes-24.mp4')

/** Grades that differ from one cue to the next, the last with a ramp; inside tolerance. */
const graded = (cue: Cue, index: number): Cue => ({
  ...cue,
  ramp: index === 3 ? 5 : 0,
  grade: {
    ...IDENTITY_GRADE,
    gamma: [1 + index / 4, 1, 1 - index / 10],
    gain: [0.9, 0.9 - index / 10, 0.9],
  },
})

/** A job on the clip, with four cues, put into a folder beside a copy of it. */
export const putTransferJob = (
  folder: string,
  settings: Partial<TransferSettings> = {},
  { clip = NUMBERED_CLIP, change = {} }: { clip?: string; change?: Partial<Reel> } = {},
): { readonly job: Job; readonly path: string; readonly media: string } => {
  const media = join(folder, basename(clip))
  copyFileSync(clip, media)
  const reel = sampleReel({
    rate: rate(24),
    frames: 60,
    startCount: 24 * 3600,
    media: {
      ...sampleReel().media,
      ...{ name: basename(clip), width: 128, height: 96, displayAspect: 4 / 3 },
      bytes: statSync(clip).size,
    },
    lineUps: [{ at: '2026-11-20T09:00:00Z', says: 'Open gate set.' }],
    transfer: { ...INITIAL_TRANSFER, ...settings },
    ...change,
  })
  const job = sampleJob([0, 13, 30, 44], graded, reel)
  const path = join(folder, 'job.reelwright.json')
  writeFileSync(path, writeJob(job))
  return { job, path, media }
}

/** The bytes of a file as text that compares quickly. */
export const bytesOf = (path: string): string => readFileSync(path, 'latin1')
