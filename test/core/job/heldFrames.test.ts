import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import { applyChange, invertChange, isEmptyChange } from '../../../src/core/job/change.ts'
import { dropHeld } from '../../../src/core/job/commands/dropHeld.ts'
import { holdFrame } from '../../../src/core/job/commands/holdFrame.ts'
import { renameHeld } from '../../../src/core/job/commands/renameHeld.ts'
import type { LabelledChange } from '../../../src/core/job/history.ts'
import type { Job } from '../../../src/core/job/job.ts'
import { MOST_HELD } from '../../../src/core/job/limits.ts'
import type { HeldId, ReelId } from '../../../src/core/job/recordIds.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const heldId = (n: number): HeldId => `held-${n}` as HeldId

const graded = sampleJob(undefined, (cue, index) => ({
  ...cue,
  ramp: index === 2 ? 3 : 0,
  grade: { ...cue.grade, saturation: 1 + index / 10 },
  framing: { ...cue.framing, zoom: 1 + index / 10 },
}))

const done = (job: Job, result: Result<LabelledChange>): Job => {
  if (!result.ok) throw new Error(result.problems[0].says)
  const after = applyChange(job, result.value.change)
  expect(applyChange(after, invertChange(result.value.change))).toEqual(job)
  return after
}

const hold = (job: Job, n: number, at = 120): Job =>
  done(job, holdFrame(job, REEL_ID, frame(at), heldId(n)))

describe('a held frame', () => {
  it('keeps the frame, with the grade and framing in force and a name that says where', () => {
    const { held } = hold(graded, 1, 253)
    expect(held[heldId(1)]).toMatchObject({
      reel: REEL_ID,
      frame: 253,
      name: 'cue 3, 10:00:10:03',
      grade: { saturation: 1.2 },
      framing: { zoom: 1.2 },
    })
  })

  it('on a ramp has what is in force there', () => {
    expect(hold(graded, 1, 251).held[heldId(1)]?.grade.saturation).toBeCloseTo(1.15, 12)
  })

  it('stays as it was when its cue is graded anew', () => {
    const job = hold(graded, 1)
    const cues = Object.fromEntries(
      Object.entries(job.cues).map(([id, cue]) => [
        id,
        { ...cue, grade: { ...cue.grade, saturation: 0 } },
      ]),
    )
    expect({ ...job, cues }.held[heldId(1)]?.grade.saturation).toBe(1.1)
  })

  it('is renamed without the spaces round it, and the same name is no change', () => {
    const job = hold(graded, 1)
    const after = done(job, renameHeld(job, heldId(1), '  Kitchen, warm '))
    expect(after.held[heldId(1)]?.name).toBe('Kitchen, warm')
    const again = renameHeld(after, heldId(1), 'Kitchen, warm')
    expect(again.ok && isEmptyChange(again.value.change)).toBe(true)
  })

  it('is dropped, the others staying', () => {
    const job = hold(hold(graded, 1), 2)
    expect(Object.keys(done(job, dropHeld(job, heldId(1))).held)).toEqual([heldId(2)])
  })

  it('is one of any frame of the reel', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999 }), (at) => {
        expect(hold(graded, 1, at).held[heldId(1)]?.frame).toBe(at)
      }),
      { seed: 71 },
    )
  })

  it.each<[string, Result<LabelledChange>, string]>([
    ['a frame past the reel', holdFrame(graded, REEL_ID, frame(1000), heldId(1)), 'not-found'],
    ['a frame of no reel', holdFrame(graded, 'reel-x' as ReelId, frame(1), heldId(1)), 'not-found'],
    ['renaming what is gone', renameHeld(graded, heldId(9), 'a'), 'not-found'],
    ['dropping what is gone', dropHeld(graded, heldId(9)), 'not-found'],
    ['no name', renameHeld(hold(graded, 1), heldId(1), ' '), 'missing'],
    [
      'a name past its length',
      renameHeld(hold(graded, 1), heldId(1), 'n'.repeat(1001)),
      'too-large',
    ],
  ])('refuses %s in a sentence', (_, result, code) => {
    expect(result.ok).toBe(false)
    if (result.ok) return
    expect(result.problems[0].code).toBe(code)
    expect(result.problems[0].says).toMatch(/^[A-Z].*\.$/u)
  })

  it('is one of at most five hundred', () => {
    let job = graded
    for (let n = 0; n < MOST_HELD; n++) job = hold(job, n)
    const more = holdFrame(job, REEL_ID, frame(1), heldId(MOST_HELD))
    expect(more.ok).toBe(false)
    if (!more.ok) expect(more.problems[0]).toMatchObject({ code: 'too-large' })
  })
})
