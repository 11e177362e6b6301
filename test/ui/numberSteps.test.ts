import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalsFor, limitWords, nudgeBy, stopAtLimits } from '../../src/ui/parts/numberSteps.ts'

const LEVEL = { step: 0.01, decimals: 3, low: -1, high: 4 }
const PERCENT = { step: 0.5, decimals: 1, low: -100, high: 100 }
const FRAMES = { step: 1, decimals: 0, low: 0, high: 10_000 }

describe('a number that is nudged', () => {
  it('moves by what is shown, however fine', () => {
    const steps = fc.record({
      step: fc.constantFrom(1, 0.5, 0.1, 0.05, 0.01, 0.005, 0.001),
      decimals: fc.integer({ min: 0, max: 4 }),
      low: fc.constant(-1000),
      high: fc.constant(1000),
    })
    fc.assert(
      fc.property(
        steps,
        fc.constantFrom(0.1, 1, 10),
        fc.integer({ min: -900, max: 900 }),
        (number, times, from) => {
          const decimals = decimalsFor(number, times)
          const { value } = stopAtLimits(from + nudgeBy(number, times), number, decimals)
          expect(value.toFixed(decimals)).not.toBe(from.toFixed(decimals))
        },
      ),
      { seed: 2, numRuns: 300 },
    )
  })

  it('shows one decimal more only where a fine step needs it', () => {
    expect(decimalsFor(LEVEL, 0.1)).toBe(3)
    expect(decimalsFor(PERCENT, 1)).toBe(1)
    expect(decimalsFor(PERCENT, 0.1)).toBe(2)
    expect(decimalsFor(FRAMES, 0.1)).toBe(0)
    expect(nudgeBy(FRAMES, 0.1)).toBe(1)
  })
})

describe('a number that stops at a limit', () => {
  it('says which one', () => {
    expect(stopAtLimits(4.01, LEVEL, 3)).toEqual({ value: 4, at: 'high' })
    expect(stopAtLimits(-7, LEVEL, 3)).toEqual({ value: -1, at: 'low' })
    expect(stopAtLimits(4, LEVEL, 3)).toEqual({ value: 4, at: undefined })
    expect(limitWords('high', LEVEL)).toBe('most is 4')
    expect(limitWords('low', { ...LEVEL, low: -0.25 }, '×')).toBe('least is −0.250×')
  })
})
