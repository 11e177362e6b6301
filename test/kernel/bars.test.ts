import { describe, expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { MatrixName, Planes } from '../../src/core/picture/planes.ts'
import type { PictureLevels } from '../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import bars from '../vectors/bars.json' with { type: 'json' }
import matrices from '../vectors/matrices.json' with { type: 'json' }
import scope from '../vectors/vectorscope.json' with { type: 'json' }
import { builtKernel } from './builtKernel.ts'
import { planesOf } from './randomPictures.ts'

const kernel = await builtKernel()

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

const BAR_WIDTH = 20
const HEIGHT = 9
const MILLIVOLTS = 700

const SETS = (['bt601', 'bt709'] as const).flatMap((matrix) =>
  [0.75, 1].map((amplitude) => ({
    matrix,
    amplitude,
    rows: bars.rows.filter((row) => row.matrix === matrix && row.amplitude === amplitude),
  })),
)

const inputOf = (planes: Planes, matrix: MatrixName) => ({
  planes,
  coding: { matrix, range: 'narrow' as const },
  grade: IDENTITY_GRADE,
  framing: IDENTITY_FRAMING,
})

const barAt = <T>(rows: readonly T[], x: number): T => rows[Math.floor(x / BAR_WIDTH)] as T

/** R′G′B′ bars of 10-bit narrow range, which holds 75 % exactly: 721. */
const rgbBars = (rows: readonly { bar: string; amplitude: number }[]): Planes =>
  planesOf('rgb', 10, rows.length * BAR_WIDTH, HEIGHT, (plane, x) => {
    const { bar, amplitude } = barAt(rows, x)
    return 64 + 876 * amplitude * (COLOURS[bar]?.[plane] ?? Number.NaN)
  })

const levelsOf = (codes: readonly number[], matrix: MatrixName): PictureLevels =>
  kernel.measureLevels(
    inputOf(
      planesOf('444', 10, 16, 4, (plane) => codes[plane] as number),
      matrix,
    ),
    matrix,
    { ...EBU_R103_V3, filtered: false },
  )

/** Places of a table of counts that are not 0. */
const places = (counts: Uint32Array): readonly number[] => {
  const found: number[] = []
  counts.forEach((count, place) => {
    if (count > 0) found.push(place)
  })
  return found
}

describe.each(SETS)('bars of $matrix at $amplitude', ({ matrix, rows, amplitude }) => {
  const codes = kernel.deliverCodes(inputOf(rgbBars(rows), matrix), matrix)

  test('have their published codes', () => {
    expect(rows).toHaveLength(8)
    for (let x = 0; x < codes.width; x++) {
      const at = (HEIGHT - 1) * codes.width + x
      expect([codes.y[at], codes.cb[at], codes.cr[at]]).toEqual(barAt(rows, x).code10)
    }
  })

  test('stand on the waveform at their published levels, one each', () => {
    const counts = kernel.lumaWaveform(codes, rows.length)
    for (const [i, { lumaMv, code10 }] of rows.entries()) {
      const [place, ...others] = places(counts.subarray(256 * i, 256 * (i + 1)))
      expect(others).toEqual([])
      expect(place).toBe(Math.floor((code10[0] as number) / 4))
      const low = ((4 * (place ?? Number.NaN) - 0.5 - 64) / 876) * MILLIVOLTS
      const high = ((4 * (place ?? Number.NaN) + 3.5 - 64) / 876) * MILLIVOLTS
      expect(lumaMv).toBeGreaterThan(low - bars.epsilonMv)
      expect(lumaMv).toBeLessThan(high + bars.epsilonMv)
    }
  })

  test('lie on the vectorscope at their published angles and amplitudes', () => {
    for (const { colour, [matrix]: published } of scope.rows) {
      const row = rows.find(({ bar }) => bar === colour)
      const single = kernel.deliverCodes(inputOf(rgbBars(row ? [row] : []), matrix), matrix)
      const [place = 0, ...others] = places(kernel.vectorscope(single, 1024))
      expect(others).toEqual([])
      const cb = (place % 1024) - 512
      const cr = 1023 - Math.floor(place / 1024) - 512
      const distance = Math.hypot(cb, cr)
      const angle = ((Math.atan2(cr, cb) * 180) / Math.PI + 360) % 360
      // Each of the two codes is rounded by up to half of one.
      const rounded = Math.SQRT1_2
      const wanted = amplitude === 1 ? published.full : published.three
      expect(Math.abs(distance - 896 * wanted)).toBeLessThan(rounded + 896 * scope.epsilonAmplitude)
      const turn = ((Math.abs(angle - published.angle) * Math.PI) / 180) * distance
      expect(turn).toBeLessThan(rounded + scope.epsilonAngle * distance)
    }
  })

  test('read from their codes have only black and the amplitude in R′, G′ and B′', () => {
    const allowed = (0.5 + (1.8556 * 876 * 0.5) / 896) / 876
    for (const { bar, code10, lumaMv } of rows) {
      const levels = levelsOf(code10, matrix)
      for (const [c, name] of (['r', 'g', 'b'] as const).entries()) {
        const wanted = amplitude * (COLOURS[bar]?.[c] ?? Number.NaN)
        expect(Math.abs(levels[name].low - wanted)).toBeLessThan(allowed)
        expect(levels[name].high).toBe(levels[name].low)
      }
      expect(Math.abs(levels.y.low * MILLIVOLTS - lumaMv)).toBeLessThan(bars.epsilonMv + 350 / 876)
    }
  })

  test('measured from R′G′B′ have their published luma, unrounded', () => {
    for (const row of rows) {
      const input = inputOf(rgbBars([row]), matrix)
      const { y } = kernel.measureLevels(input, matrix, EBU_R103_V3)
      expect(Math.abs(y.high * MILLIVOLTS - row.lumaMv)).toBeLessThan(bars.epsilonMv)
    }
  })

  test('show two levels on each waveform of R′, G′, B′', () => {
    const { parade } = kernel.measurePicture(inputOf(rgbBars(rows), matrix), matrix, EBU_R103_V3, {
      paradeColumns: 1,
    })
    for (const counts of parade ?? [])
      expect(places(counts)).toEqual([16, Math.floor((64 + 876 * amplitude) / 4)])
    expect(parade).toHaveLength(3)
  })
})

test.each(matrices.misread.rows)('$bar read as $readAs has levels no bar has', (row) => {
  const levels = levelsOf(row.codes, row.readAs as MatrixName)
  for (const [c, name] of (['r', 'g', 'b'] as const).entries())
    expect(Math.abs(levels[name].high - (row.rgb[c] as number))).toBeLessThan(
      matrices.misread.epsilon + 1e-6,
    )
})
