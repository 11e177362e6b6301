import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gradeToCdl } from '../../../../src/core/colour/cdl.ts'
import type { Grade } from '../../../../src/core/colour/grade.ts'
import type { Decision } from '../../../../src/core/formats/decisionList.ts'
import { fullReelName } from '../../../../src/core/formats/edl/edlEventLines.ts'
import { edlReelNameIn } from '../../../../src/core/formats/edl/edlReelName.ts'
import { edlLinesOf } from '../../../../src/core/formats/edl/edlText.ts'
import { writeEdl } from '../../../../src/core/formats/edl/writeEdl.ts'
import { cuesOfReel } from '../../../../src/core/job/cueList.ts'
import type { Cue, Job } from '../../../../src/core/job/job.ts'
import { rate } from '../../../../src/core/time/rate.ts'
import { framesPerDay } from '../../../../src/core/time/timecode.ts'
import { edlOf } from '../../../support/readEdlWhole.ts'
import { readEventLines } from '../../../support/readEventLines.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

const textsOf = (job: Job): readonly string[] => {
  const written = writeEdl(job, REEL_ID)
  if (!written.ok) throw new Error(written.problems[0].says)
  return written.value.files.map(({ text }) => text)
}

const level = fc.double({ min: -2, max: 2, noNaN: true })
const levels = fc.tuple(level, level, level)
const gamma = fc.double({ min: 0.05, max: 20, noNaN: true })
const grades: fc.Arbitrary<Grade> = fc
  .tuple(levels, levels, fc.tuple(gamma, gamma, gamma), fc.double({ min: 0, max: 4, noNaN: true }))
  .map(([lift, range, gammas, saturation]) => ({
    lift,
    gamma: gammas,
    gain: [
      lift[0] + Math.abs(range[0]),
      lift[1] + Math.abs(range[1]),
      lift[2] + Math.abs(range[2]),
    ],
    saturation,
  }))

const words = fc.oneof(
  fc.string({ maxLength: 30 }),
  fc.string({ unit: 'grapheme', maxLength: 200 }),
  fc.constantFrom(
    '',
    'ASC_SAT 3',
    '* RAMP 007 FRAMES',
    'x'.repeat(300),
    ' \n two\n\nlines \r\n',
    'é',
  ),
  fc
    .array(fc.constantFrom('red', 'NOTE:', 'a', 'longer-word-of-many-letters', '\n'), {
      maxLength: 60,
    })
    .map((each) => each.join(' ')),
)

const edits: fc.Arbitrary<Partial<Cue>> = fc.record({
  grade: grades,
  note: words,
  ramp: fc.oneof(fc.constant(0), fc.nat(10_000)),
  rampShape: fc.constantFrom('linear', 'eased'),
})

const rates = [
  rate(24),
  rate(25),
  rate(30_000, 1001),
  rate(30),
  rate(50),
  rate(60_000, 1001),
  rate(60),
  rate(18),
  rate(24_000, 1001),
  rate(100),
]

const jobs: fc.Arbitrary<Job> = fc
  .record({
    title: words,
    name: words,
    rate: fc.constantFrom(...rates),
    isDropFrame: fc.boolean(),
    startCount: fc.nat(86_400 * 24 - 1),
    firsts: fc.uniqueArray(fc.nat(100_000), { minLength: 1, maxLength: 8 }),
    cues: fc.array(edits, { minLength: 8, maxLength: 8 }),
  })
  .map(({ title, name, firsts, cues, ...timing }) => {
    const reel = sampleReel({ ...timing, name, frames: 100_001 })
    const job = sampleJob(
      firsts.toSorted((a, b) => a - b),
      (cue, i) => ({ ...cue, ...cues[i] }),
      reel,
    )
    return { ...job, info: { job: { ...job.info.job, title } } }
  })

/** A grade as its comments have it: to half of the sixth decimal of every number of its CDL. */
const expectGrade = (read: Grade | undefined, written: Grade): void => {
  expect(read).toBeDefined()
  if (!read) return
  const [a, b] = [gradeToCdl(read), gradeToCdl(written)]
  for (const part of ['slope', 'offset', 'power'] as const)
    for (const channel of [0, 1, 2] as const)
      expect(Math.abs(a[part][channel] - b[part][channel])).toBeLessThan(5.0001e-7)
  expect(Math.abs(a.saturation - b.saturation)).toBeLessThan(5.0001e-7)
}

const expectSame = (job: Job, decisions: readonly Decision[]): void => {
  const reel = job.reels[REEL_ID]
  if (!reel) throw new Error('no reel')
  const day = framesPerDay(reel.rate, reel.isDropFrame)
  const cues = cuesOfReel(job, REEL_ID)
  expect(decisions).toHaveLength(cues.length)
  for (const [i, cue] of cues.entries()) {
    const { recordSpan, sourceSpan, values, transition, source } = decisions[i] ?? {}
    const end = cues[i + 1]?.first ?? reel.frames
    expect(recordSpan?.from).toBe((reel.startCount + cue.first) % day)
    expect(recordSpan && recordSpan.to - recordSpan.from).toBe(end - cue.first)
    expect(sourceSpan).toEqual(recordSpan)
    expect(transition).toEqual({ kind: 'cut', frames: 0 })
    expectGrade(values?.grade, cue.grade)
    expect(values?.ramp ?? 0).toBe(cue.ramp)
    if (cue.ramp > 0) expect(values?.rampShape).toBe(cue.rampShape)
    expect(values?.note ?? '').toBe(edlLinesOf(cue.note))
    expect(source).toBe(fullReelName(reel) || edlReelNameIn(job, REEL_ID))
  }
}

describe('an edit decision list written and read again', () => {
  it('passes a strict reader and has the same places, grades, ramps and notes', () => {
    fc.assert(
      fc.property(jobs, fc.boolean(), (job, isTimed) => {
        const reel = job.reels[REEL_ID]
        for (const text of textsOf(job)) {
          readEventLines(text)
          const list = edlOf(text, isTimed ? reel : undefined)
          expect(list.rate).toEqual(reel?.rate)
          expect(list.notTaken).toEqual([])
          expectSame(job, list.decisions)
          // Nothing of our own needs keeping.
          for (const { foreign } of list.decisions) expect(foreign).toEqual([])
        }
      }),
      { seed: 1, numRuns: 300 },
    )
  })

  it('is the same where it was split', () => {
    const firsts = Array.from({ length: 2500 }, (_, i) => i * 3)
    const reel = sampleReel({ frames: 9000 })
    const job = sampleJob(firsts, (cue, i) => ({ ...cue, ramp: i % 5, note: `cue ${i}` }), reel)
    const texts = textsOf(job)
    expect(texts).toHaveLength(3)
    expectSame(
      job,
      texts.flatMap((text) => edlOf(text, reel).decisions),
    )
  })

  const folder = join(import.meta.dirname, '../../../media/interchange/edl')

  it.each(readdirSync(folder))('says again all that %s said, and once only', (name) => {
    const list = edlOf(readFileSync(join(folder, name), 'utf8'))
    const reel = sampleReel({ frames: 100_000, foreign: list.foreign })
    const job = sampleJob(
      list.decisions.map((_, i) => i * 100),
      (cue, i) => ({ ...cue, foreign: list.decisions[i]?.foreign ?? [] }),
      reel,
    )
    const [text = ''] = textsOf(job)
    readEventLines(text)
    const again = edlOf(text, reel)
    // Blanks within a line are one in ours; grades that could not be taken do not go out.
    const plain = (foreign: Decision['foreign']): unknown => {
      const kept = JSON.parse((foreign[0]?.text ?? '{}').replaceAll(/ +/gu, ' '))
      return { ...kept, notTaken: undefined }
    }
    expect(plain(again.foreign)).toEqual(plain(list.foreign))
    for (const [i, { foreign }] of list.decisions.entries())
      expect(plain(again.decisions[i]?.foreign ?? [])).toEqual(plain(foreign))
  })
})
