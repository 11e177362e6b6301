import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boundedLeastSquares } from '../../../src/core/linear/boundedLeastSquares.ts'
import { linearLeastSquares } from '../../../src/core/linear/linearLeastSquares.ts'
import nist from '../../vectors/nistLinear.json' with { type: 'json' }

/** Digits two numbers share. */
const digits = (found: number, certified: number): number =>
  found === certified ? 15 : -Math.log10(Math.abs(found - certified) / Math.abs(certified || 1))

const deviationOf = (residual: readonly number[], unknowns: number): number =>
  Math.hypot(...residual) / Math.sqrt(residual.length - unknowns)

const X = Array.from({ length: 21 }, (_, x) => x)
const POWERS = X.map((x) => [0, 1, 2, 3, 4, 5].map((k) => x ** k))
const polynomial = (coefficients: readonly number[]) =>
  X.map((x) => coefficients.reduce((sum, c, k) => sum + c * x ** k, 0))
const ONES = [1, 1, 1, 1, 1, 1]

describe('NIST StRD, linear least squares', () => {
  it('Longley: to 8 digits of the certified values', () => {
    const { rows, certified, deviation } = nist.longley
    const { solution, residual, rank } = linearLeastSquares(
      rows.map(([, ...x]) => [1, ...x]),
      rows.map(([y = 0]) => y),
    )
    expect(rank).toBe(7)
    for (const [i, value] of certified.entries())
      expect(digits(solution[i] ?? 0, value)).toBeGreaterThan(8)
    expect(digits(deviationOf(residual, 7), deviation)).toBeGreaterThan(8)
  })

  it.each([
    ['Wampler1', polynomial(ONES), ONES, 0],
    [
      'Wampler2',
      polynomial([1, 0.1, 0.01, 0.001, 0.0001, 0.00001]),
      [1, 0.1, 0.01, 0.001, 0.0001, 0.00001],
      0,
    ],
    ['Wampler3', polynomial(ONES).map((y, i) => y + (nist.wamplerDelta[i] ?? 0)), ONES, 1],
    ['Wampler4', polynomial(ONES).map((y, i) => y + 100 * (nist.wamplerDelta[i] ?? 0)), ONES, 100],
    [
      'Wampler5',
      polynomial(ONES).map((y, i) => y + 10_000 * (nist.wamplerDelta[i] ?? 0)),
      ONES,
      10_000,
    ],
  ])('%s: to 6 digits of the certified values', (_, y, certified, noise) => {
    const { solution, residual } = linearLeastSquares(POWERS, y)
    for (const [i, value] of certified.entries())
      expect(digits(solution[i] ?? 0, value)).toBeGreaterThan(6)
    const deviation = deviationOf(residual, 6)
    if (noise === 0) expect(deviation).toBeLessThan(1e-6)
    else expect(digits(deviation, noise * nist.wamplerDeviation)).toBeGreaterThan(8)
  })

  it('gives nothing to a column that those before it say', () => {
    const { solution, rank } = linearLeastSquares(
      [
        [1, 2, 0],
        [1, 2, 1],
        [1, 2, 2],
      ],
      [1, 2, 3],
    )
    expect(rank).toBe(2)
    expect(solution[1]).toBe(0)
    expect(solution[0]).toBeCloseTo(1, 12)
    expect(solution[2]).toBeCloseTo(1, 12)
  })
})

describe('bounded least squares', () => {
  const number = fc.double({ min: -5, max: 5, noNaN: true })
  const problem = fc.integer({ min: 1, max: 4 }).chain((n) =>
    fc.record({
      rows: fc.array(fc.array(number, { minLength: n, maxLength: n }), {
        minLength: n,
        maxLength: 7,
      }),
      bounds: fc.array(
        fc.tuple(
          fc.double({ min: -2, max: 0.5, noNaN: true }),
          fc.double({ min: 0.01, max: 3, noNaN: true }),
        ),
        { minLength: n, maxLength: n },
      ),
      seeds: fc.array(number, { minLength: 7, maxLength: 7 }),
    }),
  )

  const cost = (
    rows: readonly (readonly number[])[],
    right: readonly number[],
    x: readonly number[],
  ) =>
    rows.reduce((sum, row, i) => {
      const left = row.reduce((total, value, j) => total + value * (x[j] ?? 0), 0)
      return sum + (left - (right[i] ?? 0)) ** 2
    }, 0)

  it('never leaves its bounds, and no step inside them is better', () => {
    fc.assert(
      fc.property(problem, ({ rows, bounds: pairs, seeds }) => {
        const bounds = pairs.map(([low, size]) => ({ low, high: low + size }))
        const right = rows.map((_, i) => seeds[i] ?? 0)
        const { solution } = boundedLeastSquares(rows, right, bounds)
        const found = cost(rows, right, solution)
        solution.forEach((value, j) => {
          const { low = 0, high = 0 } = bounds[j] ?? {}
          expect(value).toBeGreaterThanOrEqual(low)
          expect(value).toBeLessThanOrEqual(high)
          for (const step of [-1e-3, 1e-3, -0.1, 0.1]) {
            const other = solution.map((each, k) =>
              k === j ? Math.min(high, Math.max(low, each + step)) : each,
            )
            expect(cost(rows, right, other)).toBeGreaterThanOrEqual(found - 1e-6 * (1 + found))
          }
        })
      }),
      { seed: 3, numRuns: 500 },
    )
  })

  it('rests on a bound and says which', () => {
    const { solution, rests } = boundedLeastSquares(
      [
        [1, 0],
        [0, 1],
      ],
      [5, -5],
      [
        { low: -1, high: 2 },
        { low: -3, high: 3 },
      ],
    )
    expect([solution, rests]).toEqual([
      [2, -3],
      ['high', 'low'],
    ])
  })
})
