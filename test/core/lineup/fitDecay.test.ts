import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitDecay } from '../../../src/core/lineup/fitDecay.ts'

const digits = (found: number, certified: number): number =>
  found === certified ? 15 : -Math.log10(Math.abs(found - certified) / Math.abs(certified))

/** NIST StRD, nonlinear: Lanczos1 to Lanczos3, 24 samples of f at x = 0, 0.05 … 1.15. */
const X = Array.from({ length: 24 }, (_, i) => i / 20)
const lanczos = (x: number): number =>
  0.0951 * Math.exp(-x) + 0.8607 * Math.exp(-3 * x) + 1.5576 * Math.exp(-5 * x)

/** Rounded to so many significant digits, as the sets are. */
const rounded = (value: number, significant: number): number =>
  Number(value.toPrecision(significant))

/**
 * Certified values (public domain; from memory, held by their agreement). Lanczos1 is f to 14
 * digits, Lanczos3 f to 4 decimals.
 */
const CERTIFIED = {
  Lanczos1: {
    y: X.map((x) => rounded(lanczos(x), 14)),
    terms: [
      [1.5576, 5],
      [0.8607, 3],
      [0.0951, 1],
    ],
    least: 4,
  },
  Lanczos3: {
    y: X.map((x) => Number(lanczos(x).toFixed(4))),
    terms: [
      [1.5825685901, 4.9863565084],
      [0.84400777463, 2.9515951832],
      [0.086816414977, 0.95498101505],
    ],
    least: 6,
  },
} as const

/** NIST StRD, nonlinear: MGH17 (J. J. Moré and others, 1981; Osborne's first), x = 0, 10 … 320. */
const MGH17 = [
  0.844, 0.908, 0.932, 0.936, 0.925, 0.908, 0.881, 0.85, 0.818, 0.784, 0.751, 0.718, 0.685, 0.658,
  0.628, 0.603, 0.58, 0.558, 0.538, 0.522, 0.506, 0.49, 0.478, 0.467, 0.457, 0.448, 0.438, 0.431,
  0.424, 0.42, 0.414, 0.411, 0.406,
]

describe('NIST StRD, sums of exponentials', () => {
  it('MGH17, whose terms have either sign and end on a level', () => {
    const x = MGH17.map((_, i) => 10 * i)
    const fit = fitDecay(x, MGH17, { terms: 2, hasLevel: true })
    if (!fit.ok) throw new Error(fit.problems[0].says)
    const { terms, level, squares } = fit.value
    for (const [found, certified] of [
      [level, 3.7541005211e-1],
      [terms[1]?.amplitude, 1.9358469127],
      [terms[0]?.amplitude, -1.4646871366],
      [terms[1]?.rate, 1.286753464e-2],
      [terms[0]?.rate, 2.2122699662e-2],
      [squares, 5.4648946975e-5],
    ] as const)
      expect(digits(found ?? 0, certified)).toBeGreaterThan(6)
  })

  it.each(['Lanczos1', 'Lanczos3'] as const)('%s', (set) => {
    const { y, terms, least } = CERTIFIED[set]
    const fit = fitDecay(X, y, { terms: 3, hasLevel: false })
    if (!fit.ok) throw new Error(fit.problems[0].says)
    terms.forEach(([amplitude, rate], k) => {
      const term = fit.value.terms[k]
      expect(digits(term?.rate ?? 0, rate)).toBeGreaterThan(least)
      expect(digits(term?.amplitude ?? 0, amplitude)).toBeGreaterThan(least)
    })
  })
})

it('finds the terms of a made-up decay, with its level', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.2, max: 2, noNaN: true }),
      fc.double({ min: 4, max: 12, noNaN: true }),
      fc.double({ min: 0.2, max: 1, noNaN: true }),
      fc.double({ min: -0.2, max: 0.2, noNaN: true }),
      (slow, times, part, level) => {
        const x = Array.from({ length: 60 }, (_, i) => i / 20)
        const fast = slow * times
        const y = x.map((at) => Math.exp(-fast * at) + part * Math.exp(-slow * at) + level)
        const fit = fitDecay(x, y, { terms: 2, hasLevel: true })
        if (!fit.ok) throw new Error(fit.problems[0].says)
        const [first, second] = fit.value.terms
        expect(first?.rate).toBeCloseTo(fast, 3)
        expect(second?.rate).toBeCloseTo(slow, 3)
        expect(second?.amplitude).toBeCloseTo(part, 3)
        expect(fit.value.level).toBeCloseTo(level, 3)
      },
    ),
    { seed: 8, numRuns: 25 },
  )
})

it.each([
  ['no more samples than numbers', [0, 1, 2, 3], [4, 3, 2, 1], 2, '4 samples cannot tell 4'],
  ['places that do not rise', [0, 1, 1, 2, 3], [5, 4, 3, 2, 1], 1, 'places rising'],
  ['a value that is none', [0, 1, 2, 3, 4], [5, 4, Number.NaN, 2, 1], 1, 'a value at each place'],
  ['too many exponentials', [0, 1, 2, 3, 4], [5, 4, 3, 2, 1], 9, '1 to 4 exponentials'],
])('refuses %s', (_, x, y, terms, says) => {
  const fit = fitDecay(x, y, { terms, hasLevel: false })
  expect(!fit.ok && fit.problems[0].says).toContain(says)
})
