import { describe, expect, it } from 'vitest'
import { applyChange } from '../../../src/core/job/change.ts'
import { joinCues } from '../../../src/core/job/commands/joinCues.ts'
import { moveBoundary } from '../../../src/core/job/commands/moveBoundary.ts'
import { placeCues } from '../../../src/core/job/commands/placeCues.ts'
import { setFraming } from '../../../src/core/job/commands/setFraming.ts'
import { setGrade } from '../../../src/core/job/commands/setGrade.ts'
import { setRamp } from '../../../src/core/job/commands/setRamp.ts'
import { splitCue } from '../../../src/core/job/commands/splitCue.ts'
import { cueAt, cueEnd, cueNumber, cuesOfReel } from '../../../src/core/job/cueList.ts'
import { valuesAt } from '../../../src/core/job/valuesAt.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { cueId, REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const graded = sampleJob(undefined, (cue, index) => ({
  ...cue,
  ramp: index === 2 ? 3 : 0,
  grade: { ...cue.grade, saturation: 1 + index / 10 },
}))

describe('the cue list', () => {
  it('finds the cue of a frame: from its first frame up to the next cue', () => {
    expect(cueAt(graded, REEL_ID, frame(99))?.id).toBe(cueId(1))
    expect(cueAt(graded, REEL_ID, frame(100))?.id).toBe(cueId(2))
    expect(cueAt(graded, REEL_ID, frame(999))?.id).toBe(cueId(4))
    expect(cueAt(graded, REEL_ID, frame(1000))).toBeUndefined()
  })

  it('ends a cue where the next begins, and the last with the reel', () => {
    const cues = cuesOfReel(graded, REEL_ID)
    expect([0, 1, 2, 3].map((i) => cueEnd(cues, i, 1000))).toEqual([100, 250, 400, 1000])
    expect(cues.map((cue) => cueNumber(cues, cue))).toEqual([1, 2, 3, 4])
  })
})

describe('what is in force on a frame', () => {
  const [, second, third] = cuesOfReel(graded, REEL_ID)

  it('passes slowly at both ends over an eased ramp, and as far in all', () => {
    if (!second || !third) throw new Error('no third cue')
    const at = (shape: 'linear' | 'eased') =>
      [0, 1, 2, 3].map(
        (k) =>
          valuesAt({ ...third, rampShape: shape }, second, frame(third.first + k)).grade.saturation,
      )
    const [even, eased] = [at('linear'), at('eased')]
    // A quarter of the way is 3/16 − 2/64 = 0.15625 of it.
    expect(eased[0]).toBeCloseTo(1.1 + 0.1 * 0.15625, 9)
    expect(even[0]).toBeCloseTo(1.1 + 0.1 * 0.25, 9)
    expect(eased[1]).toBeCloseTo(even[1] ?? Number.NaN, 9)
    expect(eased[3]).toBe(1.2)
  })

  it('changes on the cue’s first frame without a ramp', () => {
    if (!second) throw new Error('no second cue')
    expect(valuesAt(second, undefined, frame(100)).grade.saturation).toBe(1.1)
  })

  it('moves in equal steps over a ramp and has arrived on the frame after it', () => {
    if (!third) throw new Error('no third cue')
    const on = (n: number) => valuesAt(third, second, frame(n)).grade.saturation
    expect(on(250)).toBeCloseTo(1.125, 12)
    expect(on(251)).toBeCloseTo(1.15, 12)
    expect(on(252)).toBeCloseTo(1.175, 12)
    expect(on(253)).toBe(1.2)
  })
})

describe('commands', () => {
  it('split keeps the values, and the new cue begins by hand', () => {
    const split = splitCue(graded, REEL_ID, frame(150), cueId(9))
    if (!split.ok) throw new Error(split.problems[0].says)
    const cue = applyChange(graded, split.value.change).cues[cueId(9)]
    expect(cue).toMatchObject({ first: 150, ramp: 0, grade: { saturation: 1.1 } })
    expect(cue?.boundary).toEqual({ kind: 'by-hand', confidence: 1 })
  })

  it.each([
    ['split where a cue begins', splitCue(graded, REEL_ID, frame(100), cueId(9)), 'conflict'],
    ['split past the reel', splitCue(graded, REEL_ID, frame(2000), cueId(9)), 'not-found'],
    ['join of the first cue', joinCues(graded, [cueId(1)]), 'conflict'],
    ['join of a cue that is not there', joinCues(graded, [cueId(77)]), 'not-found'],
    ['a move onto the next cue', moveBoundary(graded, cueId(2), frame(250)), 'conflict'],
    ['a move onto the cue before', moveBoundary(graded, cueId(3), frame(100)), 'conflict'],
    ['a move of the first cue', moveBoundary(graded, cueId(1), frame(5)), 'conflict'],
    ['half a frame of ramp', setRamp(graded, [cueId(2)], 0.5), 'out-of-range'],
    [
      'gain below lift',
      setGrade(graded, [cueId(2)], (grade) => ({ ...grade, gain: [1, -0.1, 1] })),
      'out-of-range',
    ],
    [
      'gamma of nothing',
      setGrade(graded, [cueId(2)], (grade) => ({ ...grade, gamma: [0, 1, 1] })),
      'out-of-range',
    ],
    [
      'saturation below nothing',
      setGrade(graded, [cueId(2)], (grade) => ({ ...grade, saturation: -0.1 })),
      'out-of-range',
    ],
    [
      'a zoom of 100',
      setFraming(graded, [cueId(2)], (framing) => ({ ...framing, zoom: 100 })),
      'out-of-range',
    ],
  ])('refuses %s in a sentence', (_, result, code) => {
    expect(result.ok).toBe(false)
    if (result.ok) return
    expect(result.problems[0].code).toBe(code)
    expect(result.problems[0].says).toMatch(/^[A-Z].*\.$/u)
  })

  it('found again leave a boundary alone that was moved by hand', () => {
    const moved = moveBoundary(sampleJob(), cueId(2), frame(102))
    if (!moved.ok) throw new Error(moved.problems[0].says)
    const job = applyChange(sampleJob(), moved.value.change)
    const boundary = { kind: 'cut', confidence: 1 } as const
    const places = [100, 250, 300].map((first) => ({ first: frame(first), ramp: 0, boundary }))
    const placed = placeCues(job, REEL_ID, places, () => cueId(9))
    expect(placed.ok && Object.values(placed.value.change.cues?.added ?? {})).toMatchObject([
      { first: 300 },
    ])
  })

  it('places found cues with the values of the cue whose frames they take, keeping those there', () => {
    const place = (first: number) => ({
      first: frame(first),
      ramp: 0,
      boundary: { kind: 'cut', confidence: 0.9 } as const,
    })
    let next = 20
    const placed = placeCues(graded, REEL_ID, [place(100), place(300)], () => cueId(next++))
    if (!placed.ok) throw new Error(placed.problems[0].says)
    const after = applyChange(graded, placed.value.change)
    expect(cuesOfReel(after, REEL_ID).map(({ first }) => first)).toEqual([0, 100, 250, 300, 400])
    expect(after.cues[cueId(20)]?.grade.saturation).toBe(1.2)
  })
})
