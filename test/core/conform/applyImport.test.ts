import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { agreementOf } from '../../../src/core/agreement/agreementOf.ts'
import { cdlToGrade, gradeToCdl } from '../../../src/core/colour/cdl.ts'
import { type Grade, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { applyImport } from '../../../src/core/conform/applyImport.ts'
import type { ImportOptions } from '../../../src/core/conform/importPlan.ts'
import { planImport } from '../../../src/core/conform/planImport.ts'
import { suggestImport } from '../../../src/core/conform/suggestImport.ts'
import type { Decision, DecisionList } from '../../../src/core/formats/decisionList.ts'
import { readJob } from '../../../src/core/formats/job/readJob.ts'
import { writeJob } from '../../../src/core/formats/job/writeJob.ts'
import { applyChange, invertChange, isEmptyChange } from '../../../src/core/job/change.ts'
import { setAgreement } from '../../../src/core/job/commands/setAgreement.ts'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import type { Cue, Job } from '../../../src/core/job/job.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { decision, list, ownList } from '../../support/decisionLists.ts'
import { SAID } from '../../support/sampleAnswer.ts'
import { cueId, REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

const START = 900_000

const counter = (): (() => ReturnType<typeof cueId>) => {
  let made = 1000
  return () => cueId(made++)
}

const changeOf = (job: Job, of: DecisionList, options: ImportOptions) => {
  const made = applyImport(job, REEL_ID, planImport(job, REEL_ID, of, options), counter())
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value.change
}

const imported = (job: Job, of: DecisionList, options = suggestImport(job, REEL_ID, of)): Job =>
  applyChange(job, changeOf(job, of, options))

const grade = (saturation: number): Grade => ({ ...IDENTITY_GRADE, saturation })

const BOTH: ImportOptions = {
  matchBy: 'timecode',
  times: 'record',
  startsAt: null,
  takesPlaces: true,
  takesGrades: true,
}

const on = (from: number, change: Partial<Decision> = {}): Decision =>
  decision({ recordSpan: { from: START + from, to: START + from + 10 }, ...change })

describe('an import', () => {
  const job = sampleJob(undefined, (cue, index) => ({ ...cue, grade: grade(index / 10) }))

  it('begins a cue with the values of the cue whose frames it takes, then the list’s', () => {
    const after = cuesOfReel(
      imported(job, list([on(300), on(350, { values: { ramp: 7 } })]), BOTH),
      REEL_ID,
    )
    expect(
      after.map(({ first, grade: { saturation }, ramp }) => [first, saturation, ramp]),
    ).toEqual([
      [0, 0, 0],
      [100, 0.1, 0],
      [250, 0.2, 0],
      [300, 0.2, 0],
      [350, 0.2, 7],
      [400, 0.3, 0],
    ])
    expect(after[3]?.boundary).toEqual({ kind: 'by-hand', confidence: 1 })
  })

  it('takes grades, names, framings, scenes and notes only with grades, ramps only with places', () => {
    const values = {
      grade: grade(2),
      gradeName: 'B',
      scene: '7',
      note: 'cold',
      ramp: 5,
      rampShape: 'eased',
    } as const
    const second = (options: Partial<ImportOptions>) =>
      cuesOfReel(imported(job, list([on(100, { values })]), { ...BOTH, ...options }), REEL_ID)[1]
    expect(second({ takesPlaces: false })).toMatchObject({
      grade: grade(2),
      gradeName: 'B',
      scene: '7',
      note: 'cold',
      ramp: 0,
    })
    expect(second({ takesGrades: false })).toMatchObject({
      grade: grade(0.1),
      note: '',
      ramp: 5,
      rampShape: 'eased',
    })
  })

  it('keeps what a list says besides, with the cue and with the reel, once anything is taken', () => {
    const foreign = [{ format: 'edl', text: '{"comments":["x"]}' }] as const
    const whole = [{ format: 'edl', text: '{"title":"y"}' }] as const
    const after = imported(job, list([on(100, { foreign })], { foreign: whole }), BOTH)
    expect(after.cues[cueId(2)]?.foreign).toEqual(foreign)
    expect(after.reels[REEL_ID]?.foreign).toEqual(whole)
    const outside = list([on(5000, { foreign })], { foreign: whole })
    expect(isEmptyChange(changeOf(job, outside, BOTH))).toBe(true)
  })

  it('leaves an agreed cue agreed where nothing changes, and changed since where it does', () => {
    const agreed = setAgreement(job, [cueId(2), cueId(3)], 'agreed', SAID)
    if (!agreed.ok) throw new Error('not agreed')
    const before = applyChange(job, agreed.value.change)
    const values = (saturation: number) => ({ values: { grade: grade(saturation) } })
    const after = imported(before, list([on(100, values(0.1)), on(250, values(0.9))]), BOTH)
    expect([2, 3].map((n) => agreementOf(after, after.cues[cueId(n)] as Cue))).toEqual([
      'agreed',
      'changed',
    ])
  })

  it('does not replace a grade by the same one with fewer decimals', () => {
    const third = {
      ...IDENTITY_GRADE,
      gamma: [1 / 3, 0.7, 1.1] as const,
      gain: [1.1, 1, 1] as const,
    }
    const exact = sampleJob(undefined, (cue) => ({ ...cue, grade: third }))
    const { slope, offset, power, saturation } = gradeToCdl(third)
    const six = (value: number) => Number(value.toFixed(6))
    const [r, g, b] = power.map(six) as [number, number, number]
    const rounded = cdlToGrade({ slope, offset, power: [r, g, b], saturation })
    const edl = list([on(100, { values: { grade: rounded } })])
    expect(isEmptyChange(changeOf(exact, edl, BOTH))).toBe(true)
    expect(isEmptyChange(changeOf(exact, { ...edl, format: 'cdl' }, BOTH))).toBe(false)
    const back = cdlToGrade(gradeToCdl(third))
    const cdl = list([on(100, { values: { grade: back } })], { format: 'cdl' })
    expect(isEmptyChange(changeOf(exact, cdl, BOTH))).toBe(true)
  })

  it('refuses a plan made of another state of the job', () => {
    const plan = planImport(job, REEL_ID, list([on(100)]), BOTH)
    const other = sampleJob([0, 100])
    const made = applyImport(other, REEL_ID, plan, counter())
    expect(made.ok ? undefined : made.problems[0].code).toBe('conflict')
  })
})

/** Without −0, which JSON writes as 0. */
const anyGrade = fc
  .tuple(
    fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    fc.double({ min: 0, max: 3, noNaN: true }),
  )
  .map(([lift, saturation]): Grade => ({ ...IDENTITY_GRADE, lift: [lift + 0, 0, 0], saturation }))

const anyValues = fc.record(
  {
    grade: fc.oneof(anyGrade, fc.constant({ ...IDENTITY_GRADE, gamma: [0, 1, 1] as const })),
    gradeName: fc.string({ maxLength: 120 }),
    ramp: fc.integer({ min: -5, max: 12_000 }),
    rampShape: fc.constantFrom('linear' as const, 'eased' as const),
    scene: fc.string({ maxLength: 110 }),
    note: fc.string(),
  },
  { requiredKeys: [] },
)

const anySpan = fc.option(
  fc
    .tuple(fc.integer({ min: -60, max: 340 }), fc.integer({ min: 0, max: 80 }))
    .map(([from, length]) => ({
      from: START + from,
      to: START + from + length,
    })),
  { nil: undefined },
)

const anyDecision = fc.record({
  name: fc.constantFrom('', 'cue 1', 'cue 2', 'cue 3', 'cue 9', 'x', 'night'),
  source: fc.constantFrom('', 'Orlop reel 1', 'ORLOP_RE', 'OTHER', 'BL'),
  sourceSpan: anySpan,
  recordSpan: anySpan,
  transition: fc.constant({ kind: 'cut', frames: 0 } as const),
  values: anyValues,
  line: fc.constant(undefined),
  foreign: fc.constantFrom([], [{ format: 'edl' as const, text: '{"id":"x"}' }]),
}) as fc.Arbitrary<Decision>

const anyOptions = fc.record({
  matchBy: fc.constantFrom('timecode' as const, 'name' as const, 'order' as const),
  times: fc.constantFrom('record' as const, 'source' as const),
  startsAt: fc.option(fc.integer({ min: 0, max: 299 }).map(frame), { nil: null }),
  takesPlaces: fc.boolean(),
  takesGrades: fc.boolean(),
})

const anyJob = fc
  .uniqueArray(fc.integer({ min: 1, max: 299 }), { maxLength: 12 })
  .map((firsts) =>
    sampleJob(
      [0, ...firsts.toSorted((a, b) => a - b)],
      (cue, index) => ({ ...cue, grade: grade(index / 8), scene: index % 3 === 2 ? 'night' : '' }),
      sampleReel({ frames: 300 }),
    ),
  )

describe('any list on any job', () => {
  it('gives a job that can be saved and opened, and undoes exactly', () => {
    let taken = 0
    fc.assert(
      fc.property(
        anyJob,
        fc.array(anyDecision, { maxLength: 15 }),
        anyOptions,
        (job, decisions, options) => {
          const plan = planImport(job, REEL_ID, list(decisions), options)
          const change = changeOf(job, list(decisions), options)
          const after = applyChange(job, change)
          if (after !== job && !isEmptyChange(change)) taken++
          const read = readJob(writeJob(after))
          expect(read.ok ? read.value : read.problems).toEqual(after)
          expect(applyChange(after, invertChange(change))).toEqual(job)
          const before = cuesOfReel(job, REEL_ID).map(({ id }) => id)
          const kept = cuesOfReel(after, REEL_ID).map(({ id }) => id)
          expect(kept.filter((id) => before.includes(id))).toEqual(before)
          expect(plan.rows.length).toBe(decisions.length)
          for (const { outcome, says } of plan.rows)
            if (outcome === 'conflicts' || outcome === 'passed-over') expect(says).toMatch(/\.$/)
        },
      ),
      { seed: 1, numRuns: 3000 },
    )
    expect(taken).toBeGreaterThan(1000)
  })

  it('is done once: importing it again by its times changes nothing', () => {
    fc.assert(
      fc.property(anyJob, fc.array(anyDecision, { maxLength: 15 }), (job, decisions) => {
        const after = imported(job, list(decisions), BOTH)
        const again = planImport(after, REEL_ID, list(decisions), BOTH)
        expect(again.rows.filter(({ outcome }) => outcome === 'moves')).toEqual([])
      }),
      { seed: 2, numRuns: 500 },
    )
  })

  it('of a job’s own cues changes nothing there, and brings all back where they are gone', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const own = ownList(job, REEL_ID)
        for (const matchBy of ['timecode', 'name', 'order'] as const)
          expect(isEmptyChange(changeOf(job, own, { ...BOTH, matchBy }))).toBe(true)
        expect(isEmptyChange(changeOf(job, own, suggestImport(job, REEL_ID, own)))).toBe(true)
        const bare = sampleJob([0], undefined, sampleReel({ frames: 300 }))
        const values = ({ first, grade, ramp, rampShape, scene, note }: Cue) => ({
          first,
          grade,
          ramp,
          rampShape,
          scene,
          note,
        })
        expect(cuesOfReel(imported(bare, own), REEL_ID).map(values)).toEqual(
          cuesOfReel(job, REEL_ID).map(values),
        )
      }),
      { seed: 3, numRuns: 300 },
    )
  })
})
