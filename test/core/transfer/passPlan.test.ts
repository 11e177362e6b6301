import { expect, test } from 'vitest'
import type { Cue, Job, Reel } from '../../../src/core/job/job.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { decidedText } from '../../../src/core/transfer/decidedText.ts'
import {
  outputFrameAt,
  outputTimeline,
  partRange,
} from '../../../src/core/transfer/outputTimeline.ts'
import { passPlan } from '../../../src/core/transfer/passPlan.ts'
import { INITIAL_TRANSFER } from '../../../src/core/transfer/transferSettings.ts'
import { answerOf } from '../../support/sampleAnswer.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { samplePlan } from '../../support/samplePlan.ts'

const textOf = (job: Job, settings = {}): string => {
  const text = decidedText(samplePlan(settings, job))
  if (!text.ok) throw new Error(text.problems[0].says)
  return text.value
}

const jobWith = (reel: Partial<Reel>, edit: (cue: Cue) => Cue = (cue) => cue): Job =>
  sampleJob([0, 100, 250], (cue, index) => (index === 1 ? edit(cue) : cue), sampleReel(reel))

const BASE = textOf(jobWith({}))

test.each([
  ['rate', jobWith({ rate: rate(24) })],
  ['timecode', jobWith({ startCount: 7 })],
  ['base', jobWith({ base: { ...sampleReel().base, scan: 'printing-density' } })],
  ['matrix', jobWith({ media: { ...sampleReel().media, matrix: 'bt601' } })],
  ['range', jobWith({ media: { ...sampleReel().media, range: 'full' } })],
  ['pixel shape', jobWith({ media: { ...sampleReel().media, displayAspect: 4 / 3 } })],
  ['saturation', jobWith({}, (c) => ({ ...c, grade: { ...c.grade, saturation: 0.999 } }))],
  ['framing', jobWith({}, (c) => ({ ...c, framing: { ...c.framing, pan: 0.001 } }))],
  ['ramp', jobWith({}, (c) => ({ ...c, ramp: 1 }))],
  ['ramp shape', jobWith({}, (c) => ({ ...c, rampShape: 'eased' }))],
  ['place', sampleJob([0, 101, 250])],
])('what decides a picture is in the text of it: %s', (_, job) => {
  expect(textOf(job)).not.toBe(BASE)
})

test.each([
  ['note', jobWith({}, (c) => ({ ...c, note: 'x' }))],
  ['scene mark', jobWith({}, (c) => ({ ...c, scene: 'x' }))],
  ['agreement', jobWith({}, (c) => ({ ...c, answers: [answerOf(c)] }))],
  [
    'alternates',
    jobWith({}, (c) => ({ ...c, alternates: [{ name: 'x', grade: c.grade }], gradeName: 'y' })),
  ],
  ['line-ups', jobWith({ lineUps: [{ at: '2026-11-20T09:00:00Z', says: 'x' }] })],
  ['name of the reel, without a slate', jobWith({ name: 'Another' })],
])('what decides none is not: %s', (_, job) => {
  expect(textOf(job)).toBe(BASE)
})

test('the slate’s words decide only where there is a slate, the tolerance only where it limits', () => {
  const named = jobWith({ name: 'Another' })
  const slate = { head: { bars: 0, slate: 1, leader: 0 } }
  expect(textOf(named, slate)).not.toBe(textOf(jobWith({}), slate))
  const held = (job: Job): Job => ({
    ...job,
    info: { job: { ...job.info.job, tolerance: 'narrow-range' } },
  })
  expect(textOf(held(jobWith({})))).toBe(BASE)
  const limits = { limiting: 'hard' } as const
  expect(textOf(held(jobWith({})), limits)).not.toBe(textOf(jobWith({}), limits))
})

test('written frames are the head’s parts in order, then the reel', () => {
  const timeline = outputTimeline(
    { head: { bars: 2, slate: 0, leader: 1 } },
    rate(24_000, 1001),
    10,
  )
  expect([timeline.headFrames, timeline.frames]).toEqual([72, 82])
  expect(outputFrameAt(timeline, 0)).toEqual({ kind: 'bars', index: 0 })
  expect(outputFrameAt(timeline, 47)).toEqual({ kind: 'bars', index: 47 })
  expect(outputFrameAt(timeline, 48)).toEqual({ kind: 'leader', index: 0 })
  expect(outputFrameAt(timeline, 72)).toEqual({ kind: 'reel', index: 0 })
  expect(outputFrameAt(timeline, 81)).toEqual({ kind: 'reel', index: 9 })
})

test('parts follow one another and make up all, however many there are', () => {
  for (const [frames, of] of [
    [82, 8],
    [5, 9],
    [1, 1],
    [1000, 7],
  ] as const) {
    const ranges = Array.from({ length: of }, (_, i) => partRange(frames, i + 1, of))
    expect(ranges[0]?.first).toBe(0)
    expect(ranges.at(-1)?.end).toBe(frames)
    for (const [i, { first }] of ranges.entries()) if (i > 0) expect(first).toBe(ranges[i - 1]?.end)
    const lengths = ranges.map(({ first, end }) => end - first)
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThanOrEqual(1)
  }
})

test('a picture of odd size is refused as video and taken as a sequence', () => {
  const media = { ...sampleReel().media, width: 853 }
  const job = sampleJob([0], undefined, sampleReel({ media }))
  const asVideo = passPlan(job, REEL_ID, { ...INITIAL_TRANSFER, format: 'h264' })
  expect(asVideo.ok ? '' : asVideo.problems[0].says).toContain(
    '853×1080 cannot be written as video',
  )
  expect(passPlan(job, REEL_ID, INITIAL_TRANSFER).ok).toBe(true)
})
