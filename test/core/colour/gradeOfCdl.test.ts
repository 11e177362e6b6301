import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gradeToCdl } from '../../../src/core/colour/cdl.ts'
import type { Grade } from '../../../src/core/colour/grade.ts'
import { gradeOfCdl } from '../../../src/core/colour/gradeOfCdl.ts'

const grade = (digits: number): fc.Arbitrary<Grade> => {
  const number = (min: number, max: number) =>
    fc.double({ min, max, noNaN: true }).map((value) => Number(value.toPrecision(digits)) + 0)
  const triple = (min: number, max: number) =>
    fc.tuple(number(min, max), number(min, max), number(min, max))
  return fc.record({
    lift: triple(-0.5, 0.5),
    gamma: triple(0.1, 8),
    gain: triple(0.5, 4),
    saturation: number(0, 4),
  })
}

test.each([3, 6, 9, 12])(
  'a grade of %i digits comes back from its correction exactly',
  (digits) => {
    fc.assert(
      fc.property(grade(digits), (value) => {
        expect(gradeOfCdl(gradeToCdl(value))).toEqual(value)
      }),
      { seed: 1, numRuns: 2000 },
    )
  },
)

test('whatever the digits, the grade that comes back is of the same correction', () => {
  fc.assert(
    fc.property(grade(17), (value) => {
      const cdl = gradeToCdl(value)
      expect(gradeToCdl(gradeOfCdl(cdl))).toEqual(cdl)
    }),
    { seed: 2, numRuns: 2000 },
  )
})
