import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import type { GradeColumn } from '../../../src/core/colour/gradeColumns.ts'
import {
  HANDLE_AT,
  type TransferHandle,
  transferLevel,
  withTransferHandle,
} from '../../../src/core/colour/transferHandles.ts'

const near = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true })
const tripleOf = (low: number, high: number) =>
  fc.tuple(near(low, high), near(low, high), near(low, high))
const anyGrade = fc.record({
  lift: tripleOf(-0.1, 0.2),
  gamma: tripleOf(0.5, 2),
  gain: tripleOf(0.6, 1.3),
  saturation: near(0, 2),
})
const anyColumn = fc.constantFrom<GradeColumn>('all', 0, 1, 2)
const anyHandle = fc.constantFrom<TransferHandle>('black', 'mid', 'white')

describe('the handles of the transfer plot', () => {
  it('put the curve where they are dropped', () => {
    fc.assert(
      fc.property(
        anyGrade,
        anyColumn,
        anyHandle,
        near(0.3, 0.7),
        (grade, column, handle, level) => {
          // Lift stays under gain; a mid that is black or past peak before the power has no gamma.
          const target = { black: level - 0.35, mid: level, white: level + 0.35 }[handle]
          const after = withTransferHandle(grade, column, handle, target)
          const gamma = column === 'all' ? undefined : after.gamma[column]
          if (handle === 'mid' && gamma !== undefined && (gamma <= 0.1 || gamma >= 5)) return
          if (handle === 'mid' && after === grade) return
          if (handle === 'black' && target > 0.3) return
          expect(transferLevel(after, column, HANDLE_AT[handle])).toBeCloseTo(target, 6)
        },
      ),
      { seed: 7, numRuns: 500 },
    )
  })

  it('move one number alone: black leaves white, and white leaves black', () => {
    fc.assert(
      fc.property(anyGrade, near(-0.05, 0.2), near(0.8, 1.2), (grade, black, white) => {
        expect(withTransferHandle(grade, 0, 'black', black).gain).toEqual(grade.gain)
        expect(withTransferHandle(grade, 0, 'white', white).lift).toEqual(grade.lift)
        expect(withTransferHandle(grade, 1, 'white', white).gain[0]).toBe(grade.gain[0])
      }),
      { seed: 8 },
    )
  })

  it('stop where ASC CDL ends: gain never comes below lift', () => {
    const after = withTransferHandle(IDENTITY_GRADE, 'all', 'white', -0.5)
    for (const c of [0, 1, 2] as const) expect(after.gain[c]).toBeGreaterThanOrEqual(after.lift[c])
  })

  it('leave the grade where no gamma could take the mid there', () => {
    expect(withTransferHandle(IDENTITY_GRADE, 'all', 'mid', 1.2)).toBe(IDENTITY_GRADE)
    expect(withTransferHandle(IDENTITY_GRADE, 'all', 'mid', 0)).toBe(IDENTITY_GRADE)
  })
})
