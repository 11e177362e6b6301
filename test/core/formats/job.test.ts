import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { toJsonSchema } from '@valibot/to-json-schema'
import Ajv from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobFileSchema } from '../../../src/core/formats/job/jobSchema.ts'
import {
  JOB_VERSION,
  MIGRATIONS,
  type Migration,
  migrateDown,
  migrateUp,
} from '../../../src/core/formats/job/migrations.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { answerOf } from '../../support/sampleAnswer.ts'
import { sampleJob } from '../../support/sampleJob.ts'

const ROOT = resolve(import.meta.dirname, '../../..')
const SCHEMA = `${ROOT}/docs/job.schema.json`
const SAMPLE = `${ROOT}/samples/slack-water-at-skerrow.reelwright.json`

/** Without −0, which JSON does not tell from 0. */
const number = fc.double({ min: -0.5, max: 0.5, noNaN: true }).map((value) => value + 0)

const anyJob = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 900 }), number, number, fc.string({ maxLength: 40 })))
  .map((cues) => {
    const firsts = [...new Set([0, ...cues.map(([first]) => first)])].sort((a, b) => a - b)
    return sampleJob(firsts, (cue, i) => {
      const [, lift = 0, gamma = 0, note = ''] = cues[i] ?? []
      const grade = { ...cue.grade, lift: [lift, 0, 0] as const, gamma: [1 + gamma, 1, 1] as const }
      return {
        ...cue,
        grade,
        note,
        ramp: i % 3,
        rampShape: i % 2 === 0 ? 'linear' : 'eased',
        scene: note.slice(0, 9),
        ...(i % 4 === 1 && { gradeName: 'B', alternates: [{ name: 'A', grade }] }),
        ...(i % 5 === 1 && { answers: [answerOf(cue, { note }, grade)] }),
      }
    })
  })

describe('the job file', () => {
  it('comes back as it was written, to the last bit', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        expect(readJob(writeJob(job))).toEqual({ ok: true, value: job })
      }),
      { seed: 1, numRuns: 100 },
    )
  })

  it('is the same text for the same job, whatever the order of its records', () => {
    const job = sampleJob()
    const turned = { ...job, cues: Object.fromEntries(Object.entries(job.cues).reverse()) }
    expect(writeJob(turned)).toBe(writeJob(job))
  })

  it('fits the published schema, and the schema is the one the program reads by', () => {
    const made = `${JSON.stringify(
      {
        ...toJsonSchema(jobFileSchema, { target: 'draft-2020-12' }),
        title: `Reelwright job, version ${JOB_VERSION}`,
      },
      undefined,
      2,
    )}\n`
    if (process.env.WRITE_SCHEMA === '1' || !existsSync(SCHEMA)) writeFileSync(SCHEMA, made)
    expect(readFileSync(SCHEMA, 'utf8')).toBe(made)
    const validate = new Ajv({ strict: true, strictTuples: false }).compile(JSON.parse(made))
    expect(validate(JSON.parse(writeJob(sampleJob())))).toBe(true)
    expect(validate(migrateUp(JSON.parse(readFileSync(SAMPLE, 'utf8'))))).toBe(true)
    expect(validate({ ...JSON.parse(writeJob(sampleJob())), version: JOB_VERSION + 1 })).toBe(false)
  })

  it('opens the sample job', () => {
    const sample = readJob(readFileSync(SAMPLE, 'utf8'))
    expect(sample.ok && Object.keys(sample.value.cues)).toHaveLength(18)
  })

  const broken = (
    edit: (file: { readonly info: object; readonly cues: readonly unknown[] }) => unknown,
  ): string => {
    const file = JSON.parse(writeJob(sampleJob()))
    return JSON.stringify(edit(file) ?? file)
  }
  it.each([
    ['half a file', writeJob(sampleJob()).slice(0, 500), 'malformed', undefined],
    ['other JSON', '{"cues":[]}', 'unknown-format', 'format'],
    ['a list', '[]', 'unknown-format', 'format'],
    ['a later version', broken((f) => ({ ...f, version: 99 })), 'newer-version', 'version'],
    [
      'a cue twice',
      broken((f) => ({ ...f, cues: [f.cues[0], f.cues[0]] })),
      'conflict',
      'cues.1.id',
    ],
    [
      'a tolerance it does not know',
      broken((f) => ({ ...f, info: { ...f.info, tolerance: 'other' } })),
      'not-found',
      'info.tolerance',
    ],
    [
      'two house profiles of one name',
      broken((f) => {
        const house = { ...EBU_R103_V3, name: 'House rule' }
        const profiles = [
          { ...house, id: 'a' },
          { ...house, id: 'b' },
        ]
        return { ...f, info: { ...f.info, profiles } }
      }),
      'conflict',
      'info.profiles.1.name',
    ],
    [
      'a house profile with crossed limits',
      broken((f) => {
        const profiles = [{ ...EBU_R103_V3, id: 'a', name: 'A', luma: [1, 0] }]
        return { ...f, info: { ...f.info, profiles } }
      }),
      'out-of-range',
      'info.profiles.0.luma',
    ],
    ['no first cue', broken((f) => ({ ...f, cues: f.cues.slice(1) })), 'missing', 'cues'],
    [
      'an unknown field, rather than losing it',
      broken((f) => ({ ...f, weather: 'wet' })),
      'out-of-range',
      'weather',
    ],
    [
      'a prototype key',
      writeJob(sampleJob()).replace('"info": {', '"__proto__": {"x": 1}, "info": {'),
      'out-of-range',
      '__proto__',
    ],
  ])('refuses %s and says where', (_, text, code, field) => {
    const result = readJob(text)
    expect(result.ok).toBe(false)
    if (result.ok) return
    expect(result.problems[0].code).toBe(code)
    if (field) expect(result.problems[0].at?.field).toBe(field)
    expect(result.problems[0].says).toMatch(/[.!]$/u)
  })

  it('is read with a byte order mark before it, as some editors write', () => {
    const job = sampleJob()
    expect(readJob(`\ufeff${writeJob(job)}`)).toEqual({ ok: true, value: job })
  })

  it('tells every problem, not only the first', () => {
    const file = JSON.parse(writeJob(sampleJob()))
    file.cues[1].reel = 'reel-x'
    file.cues[2].first = 1000
    file.cues[3].grade.gain[2] = -1
    const result = readJob(JSON.stringify(file))
    expect(!result.ok && result.problems.map(({ at }) => at?.field)).toEqual([
      'cues.1.reel',
      'cues.2.first',
      'cues.3.grade.gain.2',
    ])
  })

  it('refuses a grade no list can carry, naming the cue and the number', () => {
    const file = JSON.parse(writeJob(sampleJob()))
    file.cues[2].grade.gamma[1] = 0
    const result = readJob(JSON.stringify(file))
    expect(!result.ok && result.problems[0].at?.field).toBe('cues.2.grade.gamma.1')
  })
})

describe('migrations', () => {
  it('are numbered one after another up to the version that is written', () => {
    expect(MIGRATIONS.map(({ to }) => to)).toEqual(
      Array.from({ length: JOB_VERSION - 1 }, (_, i) => i + 2),
    )
  })

  it('take a job of today down to version 1 and up again', () => {
    const file = JSON.parse(writeJob(sampleJob()))
    const first = migrateDown(file, 1)
    expect(first.info).toEqual({ id: 'job', title: 'Orlop', tolerance: 'ebu-r103-v3' })
    expect(migrateUp(first)).toEqual(file)
  })

  it('leave house profiles behind on the way to version 1, which has one tolerance', () => {
    const file = JSON.parse(writeJob(sampleJob()))
    const house = { ...EBU_R103_V3, id: 'house-a', name: 'House rule' }
    const info = { ...file.info, profiles: [house], tolerance: 'house-a' }
    expect(readJob(JSON.stringify({ ...file, info })).ok).toBe(true)
    const first = migrateDown({ ...file, info }, 1)
    expect(first.info).toEqual({ id: 'job', title: 'Orlop', tolerance: 'ebu-r103-v3' })
    expect(readJob(JSON.stringify(first)).ok).toBe(true)
  })

  const chain: Migration[] = [
    {
      to: 2,
      up: ({ name, ...rest }) => ({ ...rest, title: name }),
      down: ({ title, ...rest }) => ({ ...rest, name: title }),
    },
    { to: 3, up: (file) => ({ ...file, kept: true }), down: ({ kept: _, ...rest }) => rest },
  ]

  it('go up step by step and come back down to the same file', () => {
    const first = { version: 1, name: 'Orlop' }
    const third = migrateUp(first, chain)
    expect(third).toEqual({ version: 3, title: 'Orlop', kept: true })
    expect(migrateDown(third, 1, chain)).toEqual(first)
    expect(migrateDown(third, 2, chain)).toEqual({ version: 2, title: 'Orlop' })
  })
})
