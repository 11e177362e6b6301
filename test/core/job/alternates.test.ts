import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { applyChange, invertChange } from '../../../src/core/job/change.ts'
import {
  dropAlternate,
  keepAlternate,
  promoteAlternate,
  renameGrade,
} from '../../../src/core/job/commands/keepAlternate.ts'
import type { LabelledChange } from '../../../src/core/job/history.ts'
import type { Cue, Job } from '../../../src/core/job/job.ts'
import { MOST_ALTERNATES } from '../../../src/core/job/limits.ts'
import { cueId, sampleJob } from '../../support/sampleJob.ts'

const done = (job: Job, result: Result<LabelledChange>): Job => {
  if (!result.ok) throw new Error(result.problems[0].says)
  const changed = applyChange(job, result.value.change)
  expect(applyChange(changed, invertChange(result.value.change))).toEqual(job)
  return changed
}

const cueOf = (job: Job): Cue => {
  const cue = job.cues[cueId(2)]
  if (!cue) throw new Error('the sample job has a second cue')
  return cue
}

const WARM = { ...IDENTITY_GRADE, gain: [1.1, 1, 0.9] as const }

const graded = () => sampleJob([0, 100], (cue) => ({ ...cue, grade: WARM }))

const kept = (): Job => {
  const job = graded()
  return done(job, keepAlternate(job, [cueId(2)]))
}

describe('alternates of a cue', () => {
  it('keep the grade in force under the first letter, and go on under the next', () => {
    const cue = cueOf(kept())
    expect(cue.alternates).toEqual([{ name: 'A', grade: WARM }])
    expect(cue.gradeName).toBe('B')
    expect(cue.grade).toBe(WARM)
  })

  it('change places with the grade in force when promoted, names and all', () => {
    const job = kept()
    const changed: Job = {
      ...job,
      cues: { ...job.cues, [cueId(2)]: { ...cueOf(job), grade: IDENTITY_GRADE } },
    }
    const promoted = cueOf(done(changed, promoteAlternate(changed, cueId(2), 0)))
    expect(promoted.grade).toBe(WARM)
    expect(promoted.gradeName).toBe('A')
    expect(promoted.alternates).toEqual([{ name: 'B', grade: IDENTITY_GRADE }])
  })

  it('are named and dropped by their place; −1 names the grade in force', () => {
    let job = kept()
    job = done(job, renameGrade(job, cueId(2), 0, 'as the print'))
    job = done(job, renameGrade(job, cueId(2), -1, 'cooler'))
    expect(cueOf(job).alternates[0]?.name).toBe('as the print')
    expect(cueOf(job).gradeName).toBe('cooler')
    job = done(job, dropAlternate(job, cueId(2), 0))
    expect(cueOf(job).alternates).toEqual([])
  })

  it('refuse one too many, a place that is empty, and a name too long', () => {
    let job = graded()
    for (let i = 0; i < MOST_ALTERNATES; i++) job = done(job, keepAlternate(job, [cueId(2)]))
    expect(new Set(cueOf(job).alternates.map(({ name }) => name)).size).toBe(MOST_ALTERNATES)
    expect(keepAlternate(job, [cueId(2)])).toMatchObject({ ok: false })
    expect(promoteAlternate(job, cueId(1), 0)).toMatchObject({ ok: false })
    expect(renameGrade(job, cueId(2), 0, 'n'.repeat(101))).toMatchObject({ ok: false })
  })
})
