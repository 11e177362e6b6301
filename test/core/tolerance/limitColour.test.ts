import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { LUMA_WEIGHTS } from '../../../src/core/colour/lumaWeights.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import type { MatrixName } from '../../../src/core/picture/planes.ts'
import { bendLevel } from '../../../src/core/tolerance/bendLevel.ts'
import { compositePeaks } from '../../../src/core/tolerance/compositePeaks.ts'
import { levelLimits } from '../../../src/core/tolerance/levelLimits.ts'
import { limitColour } from '../../../src/core/tolerance/limitColour.ts'
import { KNEE_PART, limiterOf } from '../../../src/core/tolerance/limiter.ts'
import { PUBLISHED_PROFILES, type ToleranceProfile } from '../../../src/core/tolerance/profile.ts'

const MATRICES: readonly MatrixName[] = ['bt601', 'bt709', 'bt2020']

/** Lowest and highest of each figure a profile holds to anything. */
const figures = ([r, g, b]: Triple, matrix: MatrixName) => {
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const luma = kr * r + kg * g + kb * b
  return {
    rgb: [Math.min(r, g, b), Math.max(r, g, b)],
    luma: [luma, luma],
    composite: compositePeaks(r, g, b),
  } as const
}

const isInside = (rgb: Triple, profile: ToleranceProfile, matrix: MatrixName): boolean => {
  const limits = levelLimits(profile)
  const reached = figures(rgb, matrix)
  return (['rgb', 'luma', 'composite'] as const).every(
    (figure) => reached[figure][0] >= limits[figure][0] && reached[figure][1] <= limits[figure][1],
  )
}

/** House profiles whose limits lie across each other, but have greys inside all of them. */
const ACROSS: ToleranceProfile = {
  ...(PUBLISHED_PROFILES[0] as ToleranceProfile),
  id: 'across',
  rgb: [-0.02, 1.1],
  luma: [0.05, 1.2],
  composite: [-0.1, 0.95],
}
const NARROW_LUMA: ToleranceProfile = {
  ...ACROSS,
  id: 'narrow-luma',
  rgb: [0.1, 1],
  luma: [0.6, 0.7],
}

const PROFILES = [...PUBLISHED_PROFILES, ACROSS, NARROW_LUMA].map(
  (each) => [each.id, each] as const,
)

const level = fc.oneof(
  fc.double({ min: -0.2, max: 1.2, noNaN: true }),
  fc.double({ min: -30, max: 30, noNaN: true }),
  fc.constantFrom(0, 1, -0.05, 1.05, 2 ** 20, -(2 ** 20)),
)
const colour = fc.tuple(level, level, level)
const between = (low: number, high: number) =>
  fc.integer({ min: 0, max: 2 ** 20 }).map((part) => low + ((high - low) * part) / 2 ** 20)
/** Colours near grey, of which many are inside: evenly spread. */
const muted = fc
  .tuple(between(-0.1, 1.1), between(-0.2, 0.2), between(-0.2, 0.2))
  .map(([g, r, b]): Triple => [g + r, g, g + b])

describe.each(PROFILES)('limited to %s', (_, profile) => {
  test.each(['hard', 'soft'] as const)('%s, every colour is inside', (limiting) => {
    for (const matrix of MATRICES) {
      const limiter = limiterOf(profile, limiting, matrix)
      fc.assert(
        fc.property(colour, (rgb) => isInside(limitColour(rgb, limiter), profile, matrix)),
        { numRuns: 2000 },
      )
    }
  })

  test('hard, a colour that is inside is untouched', () => {
    const limiter = limiterOf(profile, 'hard', 'bt709')
    const within = (rgb: Triple): boolean => {
      const reached = figures(rgb, 'bt709')
      return (['rgb', 'luma', 'composite'] as const).every((figure) => {
        const limits = profile[figure]
        return !limits || (reached[figure][0] >= limits[0] && reached[figure][1] <= limits[1])
      })
    }
    let met = 0
    fc.assert(
      fc.property(muted, (rgb) => {
        if (!within(rgb)) return
        met++
        expect(limitColour(rgb, limiter)).toEqual(rgb)
      }),
      { numRuns: 2000 },
    )
    expect(met).toBeGreaterThan(20)
  })

  test('a ramp of greys does not turn back, hard or soft', () => {
    for (const limiting of ['hard', 'soft'] as const) {
      const limiter = limiterOf(profile, limiting, 'bt709')
      let last = -Infinity
      for (let grey = -2; grey < 3; grey += 1 / 512) {
        const [r, g, b] = limitColour([grey, grey, grey], limiter)
        expect(Math.max(Math.abs(r - g), Math.abs(r - b))).toBeLessThan(1e-12)
        expect(r).toBeGreaterThan(last - 1e-12)
        last = r
      }
    }
  })
})

test('soft leaves what lies before the knee as it is, and bends with a slope of 1 at it', () => {
  const range = { low: -0.05, high: 1.05, knee: KNEE_PART * 1.1 }
  const knee = 1.05 - 0.11
  for (const x of [0.06, 0.3, 0.5, 0.93]) expect(bendLevel(x, range)).toBe(x)
  const step = 1e-6
  expect((bendLevel(knee + step, range) - knee) / step).toBeCloseTo(1, 4)
  // One knee past the knee is half a knee further: k·k/(k + k).
  expect(bendLevel(knee + 0.11, range)).toBeCloseTo(knee + 0.055, 12)
  expect(bendLevel(-0.05, range)).toBeCloseTo(-0.05 + 0.055, 12)
})

test('levels are bent without turning back and never past a limit', () => {
  const range = { low: 0, high: 1, knee: 0.1 }
  fc.assert(
    fc.property(level, level, (a, b) => {
      const [low, high] = [bendLevel(Math.min(a, b), range), bendLevel(Math.max(a, b), range)]
      return low <= high && low >= 0 && high <= 1
    }),
  )
})

test('composite: saturated yellow loses colour and keeps its luma', () => {
  const profile = PUBLISHED_PROFILES.find(({ id }) => id === 'composite-525') as ToleranceProfile
  const rgb: Triple = [1, 1, 0]
  // Yellow of 100 % bars peaks at Y + C = 0.886 + 0.447 = 1.333 (SMPTE 170M factors, from memory).
  expect(compositePeaks(...rgb)[1]).toBeCloseTo(1.333, 2)
  const out = limitColour(rgb, limiterOf(profile, 'hard', 'bt601'))
  expect(0.299 * out[0] + 0.587 * out[1] + 0.114 * out[2]).toBeCloseTo(0.886, 10)
  expect(compositePeaks(...out)[1]).toBeCloseTo((120 - 7.5) / 92.5, 10)
})
