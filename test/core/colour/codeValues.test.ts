import { describe, expect, it } from 'vitest'
import {
  chromaToCode,
  codeScale,
  codeToChroma,
  codeToSignal,
  signalToCode,
} from '../../../src/core/colour/codeValues.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { rgbToYCbCr, yCbCrToRgb } from '../../../src/core/colour/yCbCr.ts'
import type { MatrixName } from '../../../src/core/picture/planes.ts'
import bars from '../../vectors/bars.json' with { type: 'json' }

const COLOURS: Readonly<Record<string, Triple>> = {
  white: [1, 1, 1],
  yellow: [1, 1, 0],
  cyan: [0, 1, 1],
  green: [0, 1, 0],
  magenta: [1, 0, 1],
  red: [1, 0, 0],
  blue: [0, 0, 1],
  black: [0, 0, 0],
}

const codes = (yCbCr: Triple, depth: number): number[] => [
  signalToCode(yCbCr[0], depth, 'narrow'),
  chromaToCode(yCbCr[1], depth, 'narrow'),
  chromaToCode(yCbCr[2], depth, 'narrow'),
]

describe('bars', () => {
  it.each(bars.rows)(
    '$matrix $bar at $amplitude lands on its published codes and levels',
    (row) => {
      const full = COLOURS[row.bar] as Triple
      const rgb: Triple = [
        full[0] * row.amplitude,
        full[1] * row.amplitude,
        full[2] * row.amplitude,
      ]
      const yCbCr = rgbToYCbCr(rgb, row.matrix as MatrixName)
      expect(codes(yCbCr, 8)).toEqual(row.code8)
      expect(codes(yCbCr, 10)).toEqual(row.code10)
      expect(Math.abs(yCbCr[0] * 700 - row.lumaMv)).toBeLessThan(bars.epsilonMv)
      expect(Math.abs(yCbCr[1] * 700 - (row.chromaMv[0] as number))).toBeLessThan(bars.epsilonMv)
      expect(Math.abs(yCbCr[2] * 700 - (row.chromaMv[1] as number))).toBeLessThan(bars.epsilonMv)
      const back = yCbCrToRgb(yCbCr, row.matrix as MatrixName)
      for (const c of [0, 1, 2] as const) expect(back[c]).toBeCloseTo(rgb[c], 12)
    },
  )
})

describe('code scales (facts levels.md §2)', () => {
  it.each([
    [8, 16, 235, 128],
    [10, 64, 940, 512],
    [12, 256, 3760, 2048],
    [16, 4096, 60160, 32768],
  ])('%i bits, narrow: black %i, peak %i, chroma zero %i', (depth, black, peak, zero) => {
    expect(codeScale(depth, 'narrow')).toMatchObject({ black, peak, chromaZero: zero })
  })

  it.each([8, 10, 12, 16])('every %i-bit code survives decode and encode', (depth) => {
    for (const range of ['narrow', 'full'] as const)
      for (let code = 0; code < 2 ** depth; code += depth > 12 ? 7 : 1) {
        expect(signalToCode(codeToSignal(code, depth, range), depth, range)).toBe(code)
        expect(chromaToCode(codeToChroma(code, depth, range), depth, range)).toBe(code)
      }
  })

  it('legal Y′CbCr can be illegal R′G′B′: Y = 64, Cb = 960 (levels.md §2)', () => {
    const [r, g, b] = yCbCrToRgb([0, 0.5, 0], 'bt709')
    expect(r).toBeCloseTo(0, 12)
    expect(g).toBeCloseTo(-0.0937, 4)
    expect(b).toBeCloseTo(0.9278, 4)
  })
})
