import { describe, expect, it } from 'vitest'
import {
  chromaToCode,
  codeToChroma,
  codeToSignal,
  signalToCode,
} from '../../../src/core/colour/codeValues.ts'
import { LUMA_WEIGHTS } from '../../../src/core/colour/lumaWeights.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { rgbToYCbCr, yCbCrToRgb, yCbCrToRgbFactors } from '../../../src/core/colour/yCbCr.ts'
import type { MatrixName } from '../../../src/core/picture/planes.ts'
import vectors from '../../vectors/matrices.json' with { type: 'json' }

describe('luma equations', () => {
  it.each(vectors.rows)('of $matrix have the published weights and factors', (row) => {
    const matrix = row.matrix as MatrixName
    expect(LUMA_WEIGHTS[matrix]).toEqual(row.weights)
    const factors = yCbCrToRgbFactors(matrix)
    for (const name of ['crToR', 'cbToB', 'cbToG', 'crToG'] as const)
      expect(Math.abs(factors[name] - row[name])).toBeLessThan(vectors.epsilon)
  })

  it.each(vectors.rows)('of $matrix give a grey no colour, and full chroma ±0.5', (row) => {
    const matrix = row.matrix as MatrixName
    for (const level of [-0.05, 0, 0.4, 1.05]) {
      const [y, cb, cr] = rgbToYCbCr([level, level, level], matrix)
      expect(y).toBeCloseTo(level, 14)
      expect(Math.abs(cb) + Math.abs(cr)).toBeLessThan(1e-15)
    }
    expect(rgbToYCbCr([1, 0, 0], matrix)[2]).toBeCloseTo(0.5, 14)
    expect(rgbToYCbCr([0, 0, 1], matrix)[1]).toBeCloseTo(0.5, 14)
    expect(rgbToYCbCr([0, 1, 1], matrix)[2]).toBeCloseTo(-0.5, 14)
  })

  it.each(vectors.hues.rows)('of BT.2020 put $colour at $angle°', ({ rgb, angle, amplitude }) => {
    const [, cb, cr] = rgbToYCbCr(rgb as unknown as Triple, 'bt2020')
    const turned = (Math.atan2(cr, cb) * 180) / Math.PI
    expect(Math.abs(((turned + 360) % 360) - angle)).toBeLessThan(vectors.hues.epsilonAngle)
    expect(Math.abs(Math.hypot(cb, cr) - amplitude)).toBeLessThan(vectors.hues.epsilonAmplitude)
  })

  it.each(vectors.misread.rows)('$bar read as $readAs shows at once', ({ codes, readAs, rgb }) => {
    const [y = 0, cb = 0, cr = 0] = codes
    const wrong = yCbCrToRgb(
      [
        codeToSignal(y, 10, 'narrow'),
        codeToChroma(cb, 10, 'narrow'),
        codeToChroma(cr, 10, 'narrow'),
      ],
      readAs as MatrixName,
    )
    for (const c of [0, 1, 2] as const)
      expect(Math.abs(wrong[c] - (rgb[c] as number))).toBeLessThan(vectors.misread.epsilon)
  })
})

describe('codes', () => {
  it.each(vectors.greys.rows)('of level $level are $code8 and $code10', (row) => {
    expect(signalToCode(row.level, 8, 'narrow')).toBe(row.code8)
    expect(signalToCode(row.level, 10, 'narrow')).toBe(row.code10)
  })

  it('are rounded with halves up, and held to what the bits can carry', () => {
    expect(signalToCode(0.5 / 219, 8, 'narrow')).toBe(17)
    expect(signalToCode(-0.5 / 219, 8, 'narrow')).toBe(16)
    expect(signalToCode(9, 10, 'narrow')).toBe(1023)
    expect(signalToCode(-9, 10, 'narrow')).toBe(0)
    expect(chromaToCode(9, 8, 'narrow')).toBe(255)
    expect(chromaToCode(-9, 8, 'full')).toBe(0)
  })
})
