import { expect, it } from 'vitest'
import type { WeightedColours } from '../../../src/core/census/weightedColours.ts'
import { gradeColour } from '../../../src/core/colour/grade.ts'
import { excessCost } from '../../../src/core/solve/excessCost.ts'
import { gradeCost } from '../../../src/core/solve/gradeCost.ts'
import { fillSlopes, gradeInto, gradeSlopes } from '../../../src/core/solve/gradeSlopes.ts'
import { NUMBERS, vectorGrade } from '../../../src/core/solve/gradeVector.ts'
import { normalSums } from '../../../src/core/solve/normalSums.ts'
import { COMPOSITE_625, EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { seeded } from '../../support/seeded.ts'

const random = seeded(11)
const between = (low: number, high: number) => low + (high - low) * random()

/** One colour in each of 27 boxes, so that none stands for another. */
const colours: WeightedColours = {
  colours: Float64Array.from({ length: 81 }, (_, i) => {
    const box = Math.floor(Math.floor(i / 3) / 3 ** (i % 3)) % 3
    return 0.05 + 0.33 * box + 0.2 * random()
  }),
  weights: Float64Array.from({ length: 27 }, () => 1 + 9 * random()),
}

const randomVector = (): Float64Array =>
  Float64Array.from({ length: NUMBERS }, (_, p) => {
    if (p < 3) return between(-0.15, 0.1)
    if (p < 6) return between(0.7, 1.5)
    return between(0.8, 1.4)
  })

const slopesOf = (sumAt: (vector: Float64Array) => number, vector: Float64Array): number[] =>
  [...vector].map((value, p) => {
    const step = 1e-5
    return (sumAt(vector.with(p, value + step)) - sumAt(vector.with(p, value - step))) / (2 * step)
  })

it('grades as the reference, to the last digits, with the slopes of differences', () => {
  const out = new Float64Array(3)
  const graded = gradeSlopes()
  for (let n = 0; n < 200; n++) {
    const vector = randomVector()
    const place = 3 * Math.floor(27 * random())
    const [r = 0, g = 0, b = 0] = colours.colours.subarray(place, place + 3)
    const expected = gradeColour([r, g, b], vectorGrade(vector))
    gradeInto(out, colours.colours, place, vector)
    fillSlopes(graded, colours.colours, place, vector)
    for (const c of [0, 1, 2] as const) {
      expect(out[c]).toBeCloseTo(expected[c], 12)
      expect(graded.out[c]).toBeCloseTo(expected[c], 12)
      const differences = slopesOf((v) => gradeColour([r, g, b], vectorGrade(v))[c], vector)
      // Near black a power is too steep for a difference to tell.
      if (Math.min(...expected.map(Math.abs)) < 0.05) continue
      for (const [p, slope] of differences.entries())
        expect(graded.slopes[c * NUMBERS + p]).toBeCloseTo(slope, 4)
    }
  }
})

it('knows how the cost of a grade rises', () => {
  for (let n = 0; n < 20; n++) {
    const cost = gradeCost(colours, randomVector(), -0.05, 1.05)
    const vector = randomVector()
    const sums = normalSums()
    cost.addNormal(vector, sums)
    const differences = slopesOf(cost.costAt, vector)
    const size = Math.hypot(...differences)
    for (const [p, slope] of differences.entries())
      expect(Math.abs((sums.slope[p] ?? 0) - slope)).toBeLessThan(0.03 * size)
  }
})

it.each([EBU_R103_V3, COMPOSITE_625])('knows how the excess of $name rises', (profile) => {
  const excess = excessCost(colours, 'bt709', { ...profile, area: 0.1 })
  const margins = { low: 0.05, high: 0.08 }
  let some = 0
  for (let n = 0; n < 40; n++) {
    const vector = randomVector()
    const sum = excess.at(vector, margins)
    if (sum > 0) some++
    const { past, slopes, parts } = excess.rowsAt(vector, margins)
    const counted = past.map((by, row) => (parts[row] ?? 0) * Math.max(0, by))
    expect(counted.reduce((all, part, row) => all + part * (past[row] ?? 0), 0)).toBeCloseTo(
      sum,
      12,
    )
    const differences = slopesOf((v) => excess.at(v, margins), vector)
    const size = Math.hypot(...differences)
    for (const [p, slope] of differences.entries()) {
      const told = counted.reduce(
        (all, part, row) => all + 2 * part * (slopes[row * NUMBERS + p] ?? 0),
        0,
      )
      expect(Math.abs(told - slope)).toBeLessThanOrEqual(0.02 * size + 1e-9)
    }
  }
  expect(some).toBeGreaterThan(10)
})
