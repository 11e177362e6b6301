import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import type { Job, Reel } from '../../src/core/job/job.ts'
import { rate } from '../../src/core/time/rate.ts'
import {
  INITIAL_TRANSFER,
  type TransferSettings,
} from '../../src/core/transfer/transferSettings.ts'
import { encodeDpx } from '../../src/media/dpx/encodeDpx.ts'
import { chanceFrom } from '../support/fuzzReader.ts'
import { sampleJob, sampleReel } from '../support/sampleJob.ts'

/** Two grades that bring any scan inside tolerance. */
const FLAT = {
  ...IDENTITY_GRADE,
  lift: [0.1, 0.1, 0.1],
  gain: [0.8, 0.8, 0.8],
  saturation: 0.5,
} as const
const WARM = { ...FLAT, gain: [0.8, 0.75, 0.7] } as const

const SIZE = { width: 160, height: 90 } as const

/** A job of two cues, the second graded, on a scan of `frames` with particulars `media`. */
const jobOn = (
  frames: number,
  media: Partial<Reel['media']>,
  transfer: Partial<TransferSettings>,
): Job => {
  const sample = sampleReel()
  const reel = sampleReel({
    frames,
    rate: rate(10),
    startCount: 36_000,
    transfer: { ...INITIAL_TRANSFER, ...transfer },
    lineUps: [{ at: '2026-01-05T08:00:00Z', says: 'Bars and leader seen.' }],
    media: { ...sample.media, ...SIZE, displayAspect: 16 / 9, ...media },
  })
  return sampleJob(
    [0, Math.floor(frames / 2)],
    (cue, i) => ({ ...cue, grade: i ? WARM : FLAT }),
    reel,
  )
}

/** A scan of numbered DPX pictures in a folder, and a job on it; returns the job's path. */
export const dpxScan = (
  folder: string,
  frames: number,
  transfer: Partial<TransferSettings> = {},
): string => {
  const chance = chanceFrom(8)
  const plane = () => Uint16Array.from({ length: SIZE.width * SIZE.height }, () => 64 + chance(877))
  let bytes = 0
  for (let n = 1; n <= frames; n++) {
    const samples = [plane(), plane(), plane()] as const
    const picture = { ...SIZE, samples, transfer: 1, colorimetric: 1, name: 'scan' }
    const file = encodeDpx({ ...picture, rate: rate(10) })
    bytes += file.length
    writeFileSync(join(folder, `scan_${String(n).padStart(4, '0')}.dpx`), file)
  }
  const media = { name: 'scan_####.dpx', depth: 10, layout: 'rgb', range: 'full', bytes } as const
  const path = join(folder, 'job.json')
  writeFileSync(path, writeJob(jobOn(frames, media, transfer)))
  return path
}

/** A scan as H.264 with AAC sound made by ffmpeg, and a job on it; returns the job's path. */
export const videoScan = (
  folder: string,
  frames: number,
  transfer: Partial<TransferSettings> = {},
): string => {
  const scan = join(folder, 'scan.mp4')
  const seconds = frames / 10
  execFileSync('ffmpeg', [
    ...['-v', 'error', '-y', '-f', 'lavfi', '-i', `testsrc2=s=160x90:r=10:d=${seconds}`],
    ...['-f', 'lavfi', '-i', `sine=d=${seconds}`, '-c:v', 'libx264', '-g', '20', '-bf', '2'],
    ...['-pix_fmt', 'yuv420p', '-colorspace', 'bt709', '-color_range', 'tv', '-c:a', 'aac', scan],
  ])
  const media = { name: 'scan.mp4', bytes: statSync(scan).size }
  const path = join(folder, 'job.json')
  writeFileSync(path, writeJob(jobOn(frames, media, transfer)))
  return path
}

/** Names and SHA-256 of the files of a folder. */
export const sumsOf = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((name) => [
        name,
        createHash('sha256')
          .update(readFileSync(join(folder, name)))
          .digest('hex'),
      ]),
  )

/** The MD5 of each decoded frame of a video with its time, by ffmpeg. */
export const frameSums = (path: string): string =>
  execFileSync('ffmpeg', ['-v', 'error', '-i', path, '-map', '0:v', '-f', 'framemd5', '-'], {
    encoding: 'utf8',
  })
