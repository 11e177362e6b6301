import { describe, expect, it } from 'vitest'
import { linearToBt709 } from '../../../src/core/colour/bt709Oetf.ts'
import {
  NEGATIVE_GAMMA,
  negativeDensityToLight,
  negativeDensityToSignal,
  signalToPrintingDensity,
} from '../../../src/core/film/printingDensity.ts'
import vectors from '../../vectors/printingDensity.json' with { type: 'json' }

const codeToLight = (code: number): number =>
  negativeDensityToLight(signalToPrintingDensity(code / 1023), NEGATIVE_GAMMA)

describe('10-bit printing density', () => {
  it.each(vectors.codes)('code $code is a density of $density and light $light', (row) => {
    expect(signalToPrintingDensity(row.code / 1023)).toBeCloseTo(row.density, 9)
    const error = Math.abs(codeToLight(row.code) - row.light)
    expect(error).toBeLessThan(vectors.epsilon * Math.max(1, row.light))
  })

  it.each(vectors.lights)('light $light is at code $code', ({ light, code }) => {
    const { codeEpsilon } = vectors
    expect(codeToLight(code - codeEpsilon)).toBeLessThan(light)
    expect(codeToLight(code + codeEpsilon)).toBeGreaterThan(light)
  })
})

describe('a negative', () => {
  it.each([0.4, 0.6, 0.65, 1])(
    'of gamma %f is black where clear, and white 590/300 on',
    (gamma) => {
      expect(negativeDensityToLight(0, gamma)).toBeCloseTo(0, 12)
      expect(negativeDensityToLight((gamma * 590) / 300, gamma)).toBeCloseTo(1, 12)
      expect(negativeDensityToSignal((gamma * 590) / 300, gamma)).toBeCloseTo(1, 12)
    },
  )

  it('makes one grey of layers of unlike gamma under the same exposure', () => {
    for (const exposure of [0.3, 1, 1.5, 2.2]) {
      const light = negativeDensityToLight(0.6 * exposure, 0.6)
      expect(negativeDensityToLight(0.7 * exposure, 0.7)).toBeCloseTo(light, 12)
    }
  })

  it('gives a tenfold of light for a density of gamma, far above black', () => {
    const light = (density: number) => negativeDensityToLight(density, 0.6)
    expect((light(2.3) + 0.0109) / (light(1.7) + 0.0109)).toBeCloseTo(10, 3)
  })

  it('is no brighter past density 2.4 at gamma 0.6', () => {
    expect(negativeDensityToLight(7, 0.6)).toBe(negativeDensityToLight(2.41, 0.6))
    expect(negativeDensityToLight(2.39, 0.6)).toBeLessThan(negativeDensityToLight(2.41, 0.6))
  })

  it('shows scene light as a camera does', () => {
    for (const density of [0.1, 0.5, 1.1, 1.6])
      expect(negativeDensityToSignal(density, 0.6)).toBe(
        linearToBt709(negativeDensityToLight(density, 0.6)),
      )
  })
})
