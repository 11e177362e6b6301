import { describe, expect, test } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import { applyChange, invertChange } from '../../../src/core/job/change.ts'
import { addPass } from '../../../src/core/job/commands/addPass.ts'
import { logLineUp } from '../../../src/core/job/commands/logLineUp.ts'
import { dropOverride, setOverride } from '../../../src/core/job/commands/setOverride.ts'
import { setTransfer } from '../../../src/core/job/commands/setTransfer.ts'
import type { LabelledChange } from '../../../src/core/job/history.ts'
import type { Job } from '../../../src/core/job/job.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'
import { samplePass } from '../../support/samplePass.ts'

const JOB = sampleJob()
const AT = '2026-11-26T09:00:00Z'

/** The job after a command, whose inverse brings back the one before. */
const doneTo = (job: Job, result: Result<LabelledChange>): Job => {
  if (!result.ok) throw new Error(result.problems[0].says)
  const { change } = result.value
  const done = applyChange(job, change)
  expect(applyChange(done, invertChange(change))).toEqual(job)
  return done
}

const reelOf = (job: Job) => job.reels[REEL_ID]
const says = (result: Result<unknown>): string => (result.ok ? '' : result.problems[0].says)

describe('how a reel is transferred', () => {
  test('is changed and brought back, and the same is no change', () => {
    const changed = doneTo(JOB, setTransfer(JOB, REEL_ID, { format: 'av1', limiting: 'soft' }))
    expect(reelOf(changed)?.transfer).toMatchObject({ format: 'av1', limiting: 'soft' })
    const same = setTransfer(changed, REEL_ID, { format: 'av1' })
    expect(same.ok && same.value.change).toEqual({})
  })

  test.each([-1, 61, 1.5, Number.NaN])('a head of %d seconds is refused', (slate) => {
    const head = { bars: 0, slate, leader: 0 }
    expect(says(setTransfer(JOB, REEL_ID, { head }))).toContain('whole seconds, 0 to 60')
  })
})

describe('a reason', () => {
  const given = {
    check: 'scan',
    found: 'Another.',
    about: ['a b'],
    reason: ' It was copied. ',
    at: AT,
  } as const

  test('is kept without its edges, in place of the one before, and taken back', () => {
    const one = doneTo(JOB, setOverride(JOB, REEL_ID, given))
    expect(reelOf(one)?.overrides).toEqual([{ ...given, reason: 'It was copied.' }])
    const two = doneTo(one, setOverride(one, REEL_ID, { ...given, reason: 'Again.' }))
    expect(reelOf(two)?.overrides).toEqual([{ ...given, reason: 'Again.' }])
    expect(reelOf(doneTo(two, dropOverride(two, REEL_ID, 'scan')))?.overrides).toEqual([])
    const none = dropOverride(two, REEL_ID, 'space')
    expect(none.ok && none.value.change).toEqual({})
  })

  test('without words, or with too many, is refused', () => {
    expect(says(setOverride(JOB, REEL_ID, { ...given, reason: '  ' }))).toContain('has words')
    const long = { ...given, reason: 'x'.repeat(4001) }
    expect(says(setOverride(JOB, REEL_ID, long))).toContain('4000 characters')
  })
})

test('line-ups are logged one after another, in words', () => {
  const one = doneTo(JOB, logLineUp(JOB, REEL_ID, { at: AT, says: ' Open gate 95 %. ' }))
  const two = doneTo(one, logLineUp(one, REEL_ID, { at: AT, says: 'Again.' }))
  expect(reelOf(two)?.lineUps.map((each) => each.says)).toEqual(['Open gate 95 %.', 'Again.'])
  expect(says(logLineUp(JOB, REEL_ID, { at: AT, says: ' ' }))).toContain('logged in words')
})

test('a pass is put into the job, but not of a reel that is gone', () => {
  const pass = samplePass()
  expect(doneTo(JOB, addPass(JOB, pass)).passes).toEqual({ [pass.id]: pass })
  const other = samplePass({ reel: 'gone' as typeof REEL_ID })
  expect(says(addPass(JOB, other))).toContain('no longer in the job')
})
