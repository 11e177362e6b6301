import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  applyMatrix3,
  IDENTITY_MATRIX3,
  invertMatrix3,
  type Matrix3,
  multiplyMatrix3,
  sameMatrix3,
} from '../../../src/core/colour/matrix3.ts'

const A: Matrix3 = [
  [1, 2, 3],
  [0, 1, 4],
  [5, 6, 0],
]

const B: Matrix3 = [
  [2, 0, 1],
  [1, 3, 0],
  [0, 1, 1],
]

describe('3×3 matrices', () => {
  it('multiply a column by rows', () => {
    expect(applyMatrix3(A, [1, 10, 100])).toEqual([321, 410, 65])
    expect(applyMatrix3(IDENTITY_MATRIX3, [1, 10, 100])).toEqual([1, 10, 100])
  })

  it('multiply each other, the right one being done first', () => {
    expect(multiplyMatrix3(A, B)).toEqual([
      [4, 9, 4],
      [1, 7, 4],
      [16, 18, 5],
    ])
    expect(applyMatrix3(multiplyMatrix3(A, B), [1, 2, 3])).toEqual(
      applyMatrix3(A, applyMatrix3(B, [1, 2, 3])),
    )
  })

  it('have the inverse worked by hand, and none where the determinant is 0', () => {
    expect(invertMatrix3(A)).toEqual([
      [-24, 18, 5],
      [20, -15, -4],
      [-5, 4, 1],
    ])
    expect(invertMatrix3([A[0], A[1], A[0]])).toBeUndefined()
  })

  it('times their inverse are the identity', () => {
    const value = fc.double({ min: -2, max: 2, noNaN: true })
    const row = fc.tuple(value, value, value)
    fc.assert(
      fc.property(row, row, row, ([a, ...p], [q, b, r], [s, t, c]) => {
        // A strong diagonal keeps it far from singular.
        const matrix: Matrix3 = [
          [a + 8, ...p],
          [q, b + 8, r],
          [s, t, c + 8],
        ]
        const inverse = invertMatrix3(matrix)
        const product = inverse && multiplyMatrix3(matrix, inverse).flat()
        for (const [i, value] of IDENTITY_MATRIX3.flat().entries())
          expect(product?.[i]).toBeCloseTo(value, 12)
      }),
      { seed: 3, numRuns: 500 },
    )
  })

  it('are the same where every number is', () => {
    expect(sameMatrix3(A, [...A])).toBe(true)
    expect(sameMatrix3(A, [A[0], A[1], [5, 6, 0.1]])).toBe(false)
  })
})
