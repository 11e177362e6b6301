import { describe, expect, it } from 'vitest'
import { at } from '../../../../src/core/base/assert.ts'
import { type Grade, gradeColour, IDENTITY_GRADE } from '../../../../src/core/colour/grade.ts'
import type { Triple } from '../../../../src/core/colour/triple.ts'
import { baseColour, type FilmBase, PRINT_BASE } from '../../../../src/core/film/filmBase.ts'
import { readClf } from '../../../../src/core/formats/clf/readClf.ts'
import { writeClf } from '../../../../src/core/formats/clf/writeClf.ts'
import { handOverFiles } from '../../../../src/core/formats/handOverFiles.ts'
import type { Job } from '../../../../src/core/job/job.ts'
import type { ReelId } from '../../../../src/core/job/recordIds.ts'
import { applyProcess } from '../../../../src/core/process/applyProcess.ts'
import { gradeOfProcess } from '../../../../src/core/process/gradeOfProcess.ts'
import type { ProcessStep } from '../../../../src/core/process/processList.ts'
import { between, seeded } from '../../../kernel/randomPictures.ts'
import { says } from '../../../support/lossWords.ts'
import { SAMPLE_BASES, SAMPLE_STEPS } from '../../../support/sampleBases.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../../support/sampleJob.ts'

const GRADE: Grade = {
  lift: [0.02, 0.01, 0.03],
  gamma: [1.15, 1.05, 1.1],
  gain: [1.1, 1, 0.95],
  saturation: 1.2,
}

const jobOf = (base: FilmBase, grade: Grade = IDENTITY_GRADE, firsts = [0]): Job =>
  sampleJob(firsts, (cue) => ({ ...cue, grade }), sampleReel({ base }))

const filesOf = (job: Job) => {
  const written = writeClf(job, REEL_ID)
  if (!written.ok) throw new Error(written.problems[0].says)
  return written.value.files
}

const listOf = (text: string) => {
  const read = readClf(text)
  if (!read.ok) throw new Error(read.problems[0].says)
  return read.value
}

const random = seeded(40)

/** Narrow-range codes 1…1019 and beyond, many of them near black, where the density curve bends. */
const anyColour = (): Triple => {
  const level = () => {
    const way = random()
    if (way < 0.3) return between(random, 0, 0.02)
    if (way < 0.32) return 0.001
    return between(random, (1 - 64) / 876, way < 0.7 ? (1019 - 64) / 876 : 2.1)
  }
  return [level(), level(), level()]
}

const QUARTER_CODE = 0.25 / 876

describe('a written process list', () => {
  it.each(SAMPLE_BASES)('is the base within a quarter of a 10-bit code: $name', ({ base }) => {
    const { list } = listOf(at(filesOf(jobOf(base)), 0).text)
    let worst = 0
    for (let i = 0; i < 20_000; i++) {
      const colour = anyColour()
      const expected = baseColour(colour, base)
      const made = applyProcess(list, colour)
      for (const [c, value] of expected.entries())
        worst = Math.max(worst, Math.abs(at(made, c) - value) / Math.max(1, Math.abs(value)))
    }
    expect(worst).toBeLessThan(QUARTER_CODE)
  })

  it.each(SAMPLE_BASES)('is base, its list, and then the grade exactly: $name', ({ base }) => {
    const whole = listOf(at(filesOf(jobOf(base, GRADE)), 0).text).list
    const baseOnly = listOf(at(filesOf(jobOf(base)), 0).text).list
    for (let i = 0; i < 2000; i++) {
      const colour = anyColour()
      const expected = gradeColour(applyProcess(baseOnly, colour), GRADE)
      const made = applyProcess(whole, colour)
      for (const [c, value] of expected.entries())
        expect(Math.abs(at(made, c) - value)).toBeLessThan(1e-12 * Math.max(1, Math.abs(value)))
    }
  })

  it('of a plain base is nothing but the grade, which comes back exactly', () => {
    const { list, notTaken } = listOf(at(filesOf(jobOf(PRINT_BASE, GRADE)), 0).text)
    expect(list.steps).toHaveLength(1)
    expect(gradeOfProcess(list)).toEqual(GRADE)
    expect(notTaken).toHaveLength(1)
  })

  it.each(SAMPLE_STEPS)('brings a step of the base’s own list back exactly: $kind', (step) => {
    const base = { ...PRINT_BASE, list: { name: 'own', steps: [step] } }
    const [first] = listOf(at(filesOf(jobOf(base)), 0).text).list.steps
    expect(first).toEqual(step)
  })

  it.each<[string, ProcessStep]>([
    ['low and moved', { kind: 'range', low: [0.1, 0.2], high: null, clamps: true }],
    ['high and moved', { kind: 'range', low: null, high: [0.9, 0.7], clamps: true }],
    ['moved without a clamp', { kind: 'range', low: [0.1, 0.2], high: null, clamps: false }],
    ['without any effect', { kind: 'range', low: null, high: [0.9, 0.9], clamps: false }],
  ])('has a range with one end, %s, in steps that the format allows', (_, step) => {
    const base = { ...PRINT_BASE, list: { name: 'own', steps: [step] } }
    const { list } = listOf(at(filesOf(jobOf(base)), 0).text)
    for (const colour of [[-0.5, 0.1, 0.15], [0.5, 0.9, 2] as const] as const) {
      const expected = baseColour(colour, base)
      for (const [c, value] of applyProcess(list, colour).entries())
        expect(value).toBeCloseTo(at(expected, c), 12)
    }
  })
})

describe('the files of a reel', () => {
  it('are one a cue, named and described for it, with ids that stay', () => {
    const note = 'Neutral <here> & there'
    const job = sampleJob(undefined, (cue, i) => (i === 1 ? { ...cue, note } : cue))
    const files = filesOf(job)
    expect(files.map(({ name }) => name)).toEqual([
      'Orlop-reel-1-cue-0001.clf',
      'Orlop-reel-1-cue-0002.clf',
      'Orlop-reel-1-cue-0003.clf',
      'Orlop-reel-1-cue-0004.clf',
    ])
    const read = files.map(({ text }) => listOf(text))
    expect(read[1]?.descriptions).toEqual([
      'Cue 2, in at 10:00:04:00',
      note,
      'Orlop, reel Orlop reel 1. Framing and ramps are not in it.',
    ])
    expect(read[1]?.list.name).toBe('Orlop reel 1, cue 2')
    expect(read[1]?.inputDescriptor).toContain('code 940')
    const ids = read.map(({ id }) => id)
    expect(new Set(ids).size).toBe(4)
    for (const id of ids) expect(id).toMatch(/^urn:uuid:[0-9a-f-]{36}$/u)
    const regraded = sampleJob(undefined, (cue) => ({ ...cue, grade: GRADE }))
    expect(filesOf(regraded).map(({ text }) => listOf(text).id)).toEqual(ids)
  })

  it('have the header that most readers take', () => {
    const text = at(filesOf(sampleJob()), 0).text
    expect(text).toMatch(
      /^<\?xml version="1\.0" encoding="UTF-8"\?>\n<ProcessList xmlns="http:\/\/www\.smpte-ra\.org\/ns\/2136-1\/2024" id="urn:uuid:[^"]+" name="[^"]+" compCLFversion="3\.0">\n/u,
    )
  })

  it('give a base too long for each of them a file of its own, and say so', () => {
    const points = 33
    const values = Array.from({ length: 3 * points ** 3 }, (_, i) => (i % 977) / 976.123)
    const cube: ProcessStep = { kind: 'cube', interpolation: 'tetrahedral', points, values }
    const base = { ...PRINT_BASE, list: { name: 'own', steps: [cube] } }
    const job = jobOf(
      base,
      GRADE,
      Array.from({ length: 60 }, (_, i) => i),
    )
    const [first, ...cues] = filesOf(job)
    expect(first?.name).toBe('Orlop-reel-1-base.clf')
    expect(cues).toHaveLength(60)
    expect(listOf(first?.text ?? '').list.steps).toEqual([cube])
    for (const { text } of cues) expect(gradeOfProcess(listOf(text).list)).toEqual(GRADE)
    const made = handOverFiles(job, REEL_ID, 'clf')
    expect(made.ok && says(made.value.losses)).toContain('It has a file of its own')
    const few = handOverFiles(jobOf(base), REEL_ID, 'clf')
    expect(few.ok && few.value.files).toHaveLength(1)
    expect(few.ok && says(few.value.losses)).not.toContain('file of its own')
  })

  it('say what they cannot carry, and that a base is in them', () => {
    const [, dyed] = SAMPLE_BASES
    const job = sampleJob(
      undefined,
      (cue, i) => ({ ...cue, ramp: i === 2 ? 12 : 0, note: i === 0 ? '\u0007' : '' }),
      sampleReel({ base: dyed?.base ?? PRINT_BASE }),
    )
    const made = handOverFiles(job, REEL_ID, 'clf')
    const losses = made.ok ? says(made.value.losses) : ''
    expect(losses).toContain('The ramp of cue 3')
    expect(losses).toContain('Control characters in the note of cue 1.')
    expect(losses).toContain('within a quarter of a 10-bit code')
    expect(losses).not.toContain('The base, which makes video of the scan')
    const plain = handOverFiles(sampleJob(), REEL_ID, 'clf')
    expect(plain.ok && says(plain.value.losses)).not.toMatch(/tables|ramp|Control/u)
  })

  it('are refused of a reel that is not in the job', () => {
    expect(writeClf(sampleJob(), 'other' as ReelId).ok).toBe(false)
  })
})
