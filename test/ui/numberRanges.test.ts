import fc from 'fast-check'
import { expect, it } from 'vitest'
import { rangesOf } from '../../src/ui/parts/numberRanges.ts'

it('neighbours are one stretch, all others their own', () => {
  expect(rangesOf([])).toEqual([])
  expect(rangesOf([2, 3, 4, 9])).toEqual([
    [2, 4],
    [9, 9],
  ])
})

it('stretches hold every number once', () => {
  const rising = fc.uniqueArray(fc.nat(60)).map((all) => all.sort((a, b) => a - b))
  fc.assert(
    fc.property(rising, (numbers) => {
      const back = rangesOf(numbers).flatMap(([from, to]) =>
        Array.from({ length: to - from + 1 }, (_, i) => from + i),
      )
      expect(back).toEqual(numbers)
    }),
    { seed: 1, numRuns: 200 },
  )
})
