import fc from 'fast-check'
import { expect, it } from 'vitest'
import { longestWithin } from '../../../src/core/conform/longestWithin.ts'

/** The same by looking at each stretch. */
const slowly = (firsts: readonly number[], end: number, from: number, to: number) => {
  let best: number | undefined
  let most = 0
  for (const [place, first] of firsts.entries()) {
    const share = Math.min(to, firsts[place + 1] ?? end) - Math.max(from, first)
    if (share <= most) continue
    best = place
    most = share
  }
  return best
}

it('finds the first of the stretches that most of a span lies in', () => {
  let met = 0
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 0, max: 99 }), { maxLength: 40 }),
      fc.integer({ min: -20, max: 130 }),
      fc.integer({ min: 0, max: 130 }),
      (places, from, length) => {
        const firsts = places.toSorted((a, b) => a - b)
        const right = slowly(firsts, 100, from, from + length)
        if (right !== undefined) met++
        expect(longestWithin(firsts, 100)(from, from + length)).toBe(right)
      },
    ),
    { seed: 5, numRuns: 2000 },
  )
  expect(met).toBeGreaterThan(1000)
})
