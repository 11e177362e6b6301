import { describe, expect, it } from 'vitest'
import { agreementOf } from '../../../src/core/agreement/agreementOf.ts'
import { lookSum } from '../../../src/core/agreement/cueLook.ts'
import type { Result } from '../../../src/core/base/result.ts'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { applyChange, invertChange, isEmptyChange } from '../../../src/core/job/change.ts'
import { setAgreement } from '../../../src/core/job/commands/setAgreement.ts'
import { setFraming } from '../../../src/core/job/commands/setFraming.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import { setRamp } from '../../../src/core/job/commands/setRamp.ts'
import { setRampShape } from '../../../src/core/job/commands/setRampShape.ts'
import { setScene } from '../../../src/core/job/commands/setScene.ts'
import type { LabelledChange } from '../../../src/core/job/history.ts'
import type { Cue, Job } from '../../../src/core/job/job.ts'
import { SAID } from '../../support/sampleAnswer.ts'
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
const standing = (job: Job, n: number) => agreementOf(job, cueOf(job, n))
const brighter = (job: Job, n: number, gain: number) =>
  setGrade(job, [cueId(n)], (grade) => ({ ...grade, gain: [gain, gain, gain] }))

describe('agreement', () => {
  const agreed = done(sampleJob(), setAgreement(sampleJob(), IDS, 'agreed', SAID))

  it('is to all that decides the pictures as it was, in the name that was given', () => {
    const { grade, framing, answers } = cueOf(agreed, 3)
    const [answer] = answers
    expect(answer).toMatchObject({ says: 'agreed', ...SAID, note: '', alternate: null })
    expect(answer?.look).toMatchObject({ grade, framing, first: 250, end: 400, from: null })
    expect(answer && lookSum(answer.look)).toBe(answer?.sha256)
    expect([1, 2, 3].map((n) => standing(agreed, n))).toEqual(['agreed', 'open', 'agreed'])
  })

  it('tells what was changed since, and that it was changed back', () => {
    const changed = done(agreed, brighter(agreed, 3, 1.1))
    expect(standing(changed, 3)).toBe('changed')
    expect(standing(done(changed, brighter(changed, 3, 1)), 3)).toBe('agreed')
    const zoomed = done(
      agreed,
      setFraming(agreed, [cueId(1)], (framing) => ({ ...framing, zoom: 1.2 })),
    )
    expect(standing(zoomed, 1)).toBe('changed')
  })

  it('given again is to what the cue became', () => {
    const changed = done(agreed, brighter(agreed, 3, 1.1))
    const again = done(changed, setAgreement(changed, IDS, 'agreed', SAID))
    expect(standing(again, 3)).toBe('agreed')
    expect(cueOf(again, 3).answers.map(({ look }) => look.grade.gain[0])).toEqual([1, 1.1])
    expect(cueOf(again, 1)).toBe(cueOf(changed, 1))
  })

  it('taken back is kept as what was said before', () => {
    for (const says of ['open', 'asked'] as const) {
      const after = done(agreed, setAgreement(agreed, IDS, says, SAID))
      expect(standing(after, 3)).toBe(says)
      expect(cueOf(after, 3).answers.map((answer) => answer.says)).toEqual(['agreed', says])
    }
  })

  it('is void where what it ramps from is changed, and only there', () => {
    const ramped = done(agreed, setRamp(agreed, [cueId(3)], 8))
    const given = done(ramped, setAgreement(ramped, [cueId(2), cueId(3)], 'agreed', SAID))
    const changed = done(given, brighter(given, 2, 1.2))
    expect([1, 2, 3].map((n) => standing(changed, n))).toEqual(['agreed', 'changed', 'changed'])
  })

  it('to an alternate is a change that is asked, until that grade is in force', () => {
    const warm = { ...IDENTITY_GRADE, saturation: 1.4 }
    const job = sampleJob(undefined, (cue) => ({
      ...cue,
      alternates: [{ name: 'warm', grade: warm }],
    }))
    const said = done(job, setAgreement(job, [cueId(2)], 'agreed', SAID, 'warm'))
    expect(standing(said, 2)).toBe('asked')
    const inForce = done(
      said,
      setGrade(said, [cueId(2)], () => warm),
    )
    expect(standing(inForce, 2)).toBe('agreed')
  })

  it('says nothing twice', () => {
    expect(isEmptyChange(changeOf(setAgreement(agreed, IDS, 'agreed', SAID)))).toBe(true)
    const other = { ...SAID, by: 'Joren' }
    expect(isEmptyChange(changeOf(setAgreement(agreed, IDS, 'agreed', other)))).toBe(false)
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
