import { describe, expect, it } from 'vitest'
import type { RegionValues } from '../../../src/core/chart/region.ts'
import { turned } from '../../../src/core/chart/region.ts'
import { slantedEdge } from '../../../src/core/chart/slantedEdge.ts'

/** The integral of a Gaussian of deviation 1, by Abramowitz and Stegun 7.1.26 (|error| < 1.5e-7). */
const normal = (x: number): number => {
  const z = Math.abs(x) / Math.SQRT2
  const t = 1 / (1 + 0.3275911 * z)
  const series =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
  const erf = 1 - series * Math.exp(-z * z)
  return x < 0 ? (1 - erf) / 2 : (1 + erf) / 2
}

/** An edge that leans by so many degrees, as `rise` has it across it, of pixels that are points. */
const edge = (
  degrees: number,
  rise: (across: number) => number,
  [low, high] = [0.2, 0.8],
  size = 100,
): RegionValues => {
  const angle = (Math.PI / 180) * degrees
  const values = new Float64Array(size * size)
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) {
      const across = (x - size / 2 + 0.3) * Math.cos(angle) - (y - size / 2) * Math.sin(angle)
      values[y * size + x] = (low ?? 0) + ((high ?? 1) - (low ?? 0)) * rise(across)
    }
  return { width: size, height: size, values }
}

const gaussian = (deviation: number) => (x: number) => normal(x / deviation)
const box = (width: number) => (x: number) => Math.min(1, Math.max(0, x / width + 0.5))

const gaussianMtf = (deviation: number) => (f: number) =>
  Math.exp(-2 * (Math.PI * deviation * f) ** 2)
const boxMtf = (width: number) => (f: number) =>
  f === 0 ? 1 : Math.abs(Math.sin(Math.PI * width * f) / (Math.PI * width * f))

/** The largest error up to half of Nyquist, 0.25 cycles a pixel. */
const largestError = (region: RegionValues, mtf: (f: number) => number): number => {
  const found = slantedEdge(region)
  if (!found.ok) throw new Error(found.problems[0].says)
  const errors = found.value.frequency.map((f, i) =>
    f <= 0.25 ? Math.abs((found.value.mtf[i] ?? 0) - mtf(f)) : 0,
  )
  return Math.max(...errors)
}

describe('against analytic responses, at most 0.01 off to half Nyquist', () => {
  it.each([
    [5, 0.6],
    [5, 1],
    [-7, 1.5],
    [12, 0.8],
    [3, 2],
  ])('an edge at %i° blurred by a Gaussian of %f pixels', (degrees, deviation) => {
    expect(largestError(edge(degrees, gaussian(deviation)), gaussianMtf(deviation))).toBeLessThan(
      0.01,
    )
  })

  it.each([
    [5, 1],
    [8, 2],
    [-4, 3],
  ])('an edge at %i° blurred by a box of %i pixels', (degrees, width) => {
    expect(largestError(edge(degrees, box(width)), boxMtf(width))).toBeLessThan(0.01)
  })
})

it('takes an edge that falls, one that lies, and one with noise alike', () => {
  const falling = edge(5, gaussian(1), [0.8, 0.2])
  expect(largestError(falling, gaussianMtf(1))).toBeLessThan(0.01)
  const lying = slantedEdge(turned(falling))
  expect(lying.ok && [lying.value.isHorizontal, lying.value.angle]).toEqual([
    true,
    expect.closeTo(5, 1),
  ])
  let seed = 1
  const noise = () => {
    seed = (seed * 48_271) % 2_147_483_647
    return seed / 2_147_483_647 - 0.5
  }
  const clean = edge(5, gaussian(1))
  const noisy = { ...clean, values: clean.values.map((value) => value + 0.01 * noise()) }
  expect(largestError(noisy, gaussianMtf(1))).toBeLessThan(0.03)
})

it('tells the frequency of half response', () => {
  const found = slantedEdge(edge(5, gaussian(1)))
  // exp(−2π²σ²f²) = ½ at f = √(ln 2 / 2) / (π σ).
  expect(found.ok && found.value.half).toBeCloseTo(Math.sqrt(Math.LN2 / 2) / Math.PI, 2)
})

it.each([
  ['even', edge(5, () => 0.5), 'no edge'],
  ['upright', edge(0, gaussian(1)), 'leans by 0.0°'],
  ['leaning too far', edge(40, gaussian(1)), 'leans by'],
  [
    'short',
    { width: 60, height: 10, values: edge(5, gaussian(1), [0, 1], 60).values.slice(0, 600) },
    'along 20 pixels',
  ],
])('says what is wrong with what is %s', (_, region, says) => {
  const found = slantedEdge(region)
  expect(!found.ok && found.problems[0].says).toContain(says)
})
