import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, expect, test } from 'vitest'
import { readJob } from '../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../src/core/formats/job/writeJob.ts'
import { rate } from '../../src/core/time/rate.ts'
import { REEL_ID, sampleJob } from '../support/sampleJob.ts'
import { beepOf, wavOf } from '../support/wavOf.ts'
import { reelwright } from './reelwright.ts'

const made: string[] = []
let here = ''
let job = ''
let track = ''
beforeEach(() => {
  here = mkdtempSync(join(tmpdir(), 'reelwright-sound-'))
  made.push(here)
  job = join(here, 'job.json')
  track = join(here, 'track.wav')
  writeFileSync(job, writeJob(sampleJob()))
  const tone = beepOf(6, 1, 4, 10 ** (-18 / 20))
  writeFileSync(track, wavOf([tone, tone], 48_000))
})
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true })
})

test('a track is measured, its tone told against alignment, and kept as the guide', async () => {
  const { status, out } = await reelwright([
    ...['sound', track, '--into', job, '--frame', '48', '--seconds', '1', '--made-for', '24'],
  ])
  expect(status).toBe(0)
  // A stereo sine of 1 kHz at −18 dBFS is −18 LUFS (EBU Tech 3341, test 1, 5 dB up).
  expect(out).toContain('Loudest 400 ms: −18.0 LUFS')
  expect(out).toMatch(/A tone of 1000 Hz at −18\.0 dBFS.*: at alignment by EBU R 68/u)
  expect(out).toContain('made for 24, run at 25, pitch +70.7 cents')
  const read = readJob(readFileSync(job, 'utf8'))
  expect(read.ok && read.value.reels[REEL_ID]?.guide).toEqual({
    ...{ name: 'track.wav', madeFor: rate(24), mark: { frame: 48, seconds: 1 } },
  })
})

test('as JSON it has the numbers, silence as null', async () => {
  writeFileSync(track, wavOf([new Float32Array(48_000)], 48_000))
  const { out } = await reelwright(['sound', track, '--json'])
  expect(JSON.parse(out)).toMatchObject({
    ...{ seconds: 1, rate: 48_000, channels: 1, integrated: null, written: null },
  })
})

test.each([
  [['--frame', '5000', '--seconds', '1'], 3, 'The reel goes from'],
  [['--seconds', '1'], 2, 'where picture and sound have their sync mark'],
  [['--frame', '1', '--seconds', '1', '--made-for', 'slow'], 3, 'slow'],
])('%j is refused, and the job stays as it is', async (args, status, says) => {
  const before = readFileSync(job, 'utf8')
  const refused = await reelwright(['sound', track, '--into', job, ...args])
  expect([refused.status, refused.error]).toEqual([status, expect.stringContaining(says)])
  expect(readFileSync(job, 'utf8')).toBe(before)
})

test('what has no sound, and what is no media, is told', async () => {
  const { status, error } = await reelwright(['sound', job])
  expect([status, error]).toEqual([3, expect.stringMatching(/cannot be read|has no sound/u)])
  expect((await reelwright(['sound', join(here, 'gone.wav')])).status).toBe(3)
})
