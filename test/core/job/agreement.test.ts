import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import { agreementOf } from '../../../src/core/job/agreementOf.ts'
import { applyChange, invertChange, isEmptyChange } from '../../../src/core/job/change.ts'
import { setAgreement } from '../../../src/core/job/commands/setAgreement.ts'
import { setFraming } from '../../../src/core/job/commands/setFraming.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import { setRampShape } from '../../../src/core/job/commands/setRampShape.ts'
import { setScene } from '../../../src/core/job/commands/setScene.ts'
import type { LabelledChange } from '../../../src/core/job/history.ts'
import type { Cue, Job } from '../../../src/core/job/job.ts'
import { cueId, sampleJob } from '../../support/sampleJob.ts'

const IDS = [cueId(1), cueId(3)]

const changeOf = (result: Result<LabelledChange>) => {
  if (!result.ok) throw new Error(result.problems[0].says)
  return result.value.change
}
const done = (job: Job, result: Result<LabelledChange>): Job => {
  const change = changeOf(result)
  const after = applyChange(job, change)
  expect(applyChange(after, invertChange(change))).toEqual(job)
  return after
}
const cueOf = (job: Job, n: number): Cue => {
  const cue = job.cues[cueId(n)]
  if (!cue) throw new Error(`no cue ${n}`)
  return cue
}
const brighter = (job: Job, n: number, gain: number) =>
  setGrade(job, [cueId(n)], (grade) => ({ ...grade, gain: [gain, gain, gain] }))

describe('agreement', () => {
  const agreed = done(sampleJob(), setAgreement(sampleJob(), IDS, 'agreed'))

  it('is to the grade and framing as they were', () => {
    const { grade, framing } = cueOf(agreed, 3)
    expect(cueOf(agreed, 3).agreedLook).toEqual({ grade, framing })
    expect([1, 2, 3].map((n) => agreementOf(cueOf(agreed, n)))).toEqual([
      'agreed',
      'open',
      'agreed',
    ])
  })

  it('tells what was changed since, and that it was changed back', () => {
    const changed = done(agreed, brighter(agreed, 3, 1.1))
    expect(agreementOf(cueOf(changed, 3))).toBe('changed')
    expect(agreementOf(cueOf(done(changed, brighter(changed, 3, 1)), 3))).toBe('agreed')
    const zoomed = done(
      agreed,
      setFraming(agreed, [cueId(1)], (framing) => ({ ...framing, zoom: 1.2 })),
    )
    expect(agreementOf(cueOf(zoomed, 1))).toBe('changed')
  })

  it('given again is to what the cue became', () => {
    const changed = done(agreed, brighter(agreed, 3, 1.1))
    const again = done(changed, setAgreement(changed, IDS, 'agreed'))
    expect(agreementOf(cueOf(again, 3))).toBe('agreed')
    expect(cueOf(again, 3).agreedLook?.grade.gain).toEqual([1.1, 1.1, 1.1])
    expect(cueOf(again, 1)).toBe(cueOf(changed, 1))
  })

  it('taken back keeps no look', () => {
    for (const state of ['open', 'asked'] as const)
      expect(cueOf(done(agreed, setAgreement(agreed, IDS, state)), 3)).toMatchObject({
        agreement: state,
        agreedLook: null,
      })
  })
})

describe('marks', () => {
  it('sets one scene mark on several cues, without the spaces round it', () => {
    const job = sampleJob()
    const marked = done(job, setScene(job, IDS, ' 12a  '))
    expect(Object.values(marked.cues).map(({ scene }) => scene)).toEqual(['12a', '', '12a', ''])
    expect(isEmptyChange(changeOf(setScene(marked, IDS, '12a')))).toBe(true)
  })

  it('refuses a scene mark too long to be kept', () => {
    const job = sampleJob()
    expect(setScene(job, IDS, 'x'.repeat(100)).ok).toBe(true)
    expect(setScene(job, IDS, 'x'.repeat(101))).toMatchObject({
      ok: false,
      problems: [{ code: 'too-large', at: { field: 'scene' } }],
    })
  })

  it('sets the shape of ramps', () => {
    const job = sampleJob()
    const eased = done(job, setRampShape(job, IDS, 'eased'))
    expect(cueOf(eased, 3).rampShape).toBe('eased')
    expect(isEmptyChange(changeOf(setRampShape(eased, IDS, 'eased')))).toBe(true)
  })
})
