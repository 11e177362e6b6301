import { describe, expect, it } from 'vitest'
import { type Grade, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { applyImport } from '../../../src/core/conform/applyImport.ts'
import { isWrittenAs } from '../../../src/core/conform/isWrittenAs.ts'
import { planImport } from '../../../src/core/conform/planImport.ts'
import { suggestImport } from '../../../src/core/conform/suggestImport.ts'
import { handOverFiles } from '../../../src/core/formats/handOverFiles.ts'
import type { HandOverFormat } from '../../../src/core/formats/handOverFormats.ts'
import { readList } from '../../../src/core/formats/readList.ts'
import { applyChange } from '../../../src/core/job/change.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { Cue, Job } from '../../../src/core/job/job.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const REEL = sampleReel()

const grade = (k: number): Grade => ({
  lift: [0.01 * k, -0.02, 1 / 30],
  gamma: [1.1, 1 / (1 + 0.1 * k), 0.9],
  gain: [1.2, 1 - 0.01 * k, 1 / 1.1],
  saturation: 0.7 + 0.1 * k,
})

const job = sampleJob([0, 100, 250, 400, 777], (cue, index) => ({
  ...cue,
  grade: index === 3 ? IDENTITY_GRADE : grade(index),
  ramp: index === 2 ? 12 : 0,
  note: index === 1 ? 'Night, cold' : index === 4 ? 'Keep “that” dark…' : '',
  scene: index > 2 ? '12' : '',
}))

const written = (of: Job, format: HandOverFormat): readonly string[] => {
  const made = handOverFiles(of, REEL_ID, format)
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value.files.map(({ text }) => text)
}

let made = 500

/** A job after importing our own file as it is suggested. */
const imported = (into: Job, text: string) => {
  const read = readList('own', text, { rate: REEL.rate, isDropFrame: REEL.isDropFrame })
  if (!read.ok) throw new Error(read.problems[0].says)
  const plan = planImport(into, REEL_ID, read.value, suggestImport(into, REEL_ID, read.value))
  const change = applyImport(into, REEL_ID, plan, () => cueId(made++))
  if (!change.ok) throw new Error(change.problems[0].says)
  return { plan, after: applyChange(into, change.value.change), list: read.value }
}

const WITH_PLACES: readonly HandOverFormat[] = ['edl', 'otio', 'csv']
const ALL: readonly HandOverFormat[] = [...WITH_PLACES, 'ccc', 'cdl']

describe('a list of our own', () => {
  it.each(ALL)('changes nothing of the job it was written from: %s', (format) => {
    const [text = ''] = written(job, format)
    const { plan, after } = imported(job, text)
    expect(plan.rows.map(({ outcome, cue }) => [outcome, cue?.id])).toEqual(
      cuesOfReel(job, REEL_ID).map(({ id }) => ['matches', id]),
    )
    expect(plan.untouched).toEqual([])
    expect(after).toEqual(job)
  })

  it.each(WITH_PLACES)('brings all back to a job with one cue: %s', (format) => {
    const [text = ''] = written(job, format)
    const { after, list } = imported(sampleJob([0]), text)
    const cues = cuesOfReel(after, REEL_ID)
    expect(cues.map(({ first }) => first)).toEqual([0, 100, 250, 400, 777])
    expect(cues.map(({ ramp }) => ramp)).toEqual([0, 0, 12, 0, 0])
    expect(cues[1]?.note).toBe('Night, cold')
    for (const [index, cue] of cues.entries()) {
      const own = cuesOfReel(job, REEL_ID)[index] as Cue
      expect(isWrittenAs(cue.grade, own.grade, list.format)).toBe(true)
    }
  })

  it.each(['ccc', 'cdl'] as const)('gives its grades to the cues it names: %s', (format) => {
    const [text = ''] = written(job, format)
    const bare = sampleJob([0, 100, 250, 400, 777])
    const { after } = imported(bare, text)
    for (const [index, cue] of cuesOfReel(after, REEL_ID).entries()) {
      const own = cuesOfReel(job, REEL_ID)[index] as Cue
      expect(isWrittenAs(cue.grade, own.grade, 'cdl')).toBe(true)
    }
  })

  it.each(['ccc', 'cdl'] as const)(
    'gives its grades by cue-in times, whatever was added: %s',
    (format) => {
      const [text = ''] = written(job, format)
      const { after } = imported(sampleJob([0, 50, 100, 250, 400, 777]), text)
      const own = cuesOfReel(job, REEL_ID)
      for (const cue of cuesOfReel(after, REEL_ID)) {
        const same = own.find(({ first }) => first === cue.first)
        expect(isWrittenAs(cue.grade, same?.grade ?? IDENTITY_GRADE, 'cdl')).toBe(true)
      }
      const whole = cuesOfReel(imported(sampleJob([0]), text).after, REEL_ID)
      expect(whole.map(({ first }) => first)).toEqual([0, 100, 250, 400, 777])
    },
  )

  it.each(['otio', 'csv'] as const)('brings back how cues were found to begin: %s', (format) => {
    const found = sampleJob([0, 100, 250, 400], (cue, index) =>
      index === 1
        ? { ...cue, boundary: { kind: 'dissolve', confidence: 1 / 3 } }
        : index === 2
          ? { ...cue, boundary: { kind: 'fade-in', confidence: 0.9 } }
          : cue,
    )
    const [text = ''] = written(found, format)
    const boundaries = cuesOfReel(found, REEL_ID).map(({ boundary }) => boundary)
    for (const into of [sampleJob([0]), sampleJob([0, 100, 252, 400])])
      expect(
        cuesOfReel(imported(into, text).after, REEL_ID).map(({ boundary }) => boundary),
      ).toEqual(boundaries)
  })

  it('in parts brings all back, in whatever order these are imported', () => {
    const many = Array.from({ length: 2000 }, (_, index) => 12 * index)
    const reel = sampleReel({ frames: 24_000 })
    const parts = written(
      sampleJob(many, (cue, index) => ({ ...cue, grade: grade((index % 40) / 10) }), reel),
      'edl',
    )
    expect(parts).toHaveLength(3)
    for (const order of [
      [0, 1, 2],
      [1, 2, 0],
      [2, 1, 0],
    ]) {
      let into = sampleJob([0], undefined, reel)
      for (const part of order) into = imported(into, parts[part] ?? '').after
      expect(cuesOfReel(into, REEL_ID).map(({ first }) => first)).toEqual(many)
    }
  })

  it.each(ALL)('is imported twice as it is once: %s', (format) => {
    const [text = ''] = written(job, format)
    const once = imported(sampleJob([0, 100, 250, 400, 777]), text).after
    expect(imported(once, text).after).toEqual(once)
  })
})
