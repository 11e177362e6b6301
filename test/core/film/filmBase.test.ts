import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { IDENTITY_MATRIX3, invertMatrix3, type Matrix3 } from '../../../src/core/colour/matrix3.ts'
import { mapTriple, type Triple, triple } from '../../../src/core/colour/triple.ts'
import {
  baseColour,
  baseDensities,
  baseDensity,
  baseSignal,
  type FilmBase,
  isPlainBase,
  isPlainFilm,
  PRINT_BASE,
  sameBase,
} from '../../../src/core/film/filmBase.ts'
import { printDensityToSignal, signalToPrintDensity } from '../../../src/core/film/printDensity.ts'
import type { ProcessList } from '../../../src/core/process/processList.ts'

const CHANNELS = [0, 1, 2] as const

/** Half of the cyan dye gone, and one unwanted absorption: invented numbers. */
const DYES: Matrix3 = [
  [2, 0, 0],
  [-0.1, 1, 0],
  [0, 0.2, 1],
]

const base = (change: Partial<FilmBase>): FilmBase => ({ ...PRINT_BASE, ...change })

const matrix: ProcessList = {
  name: 'none',
  steps: [{ kind: 'matrix', rows: IDENTITY_MATRIX3, offset: [0, 0, 0] }],
}

const negative = base({
  scan: 'negative',
  clear: [0.25, 0.6, 0.85],
  gamma: [0.55, 0.6, 0.65],
})

const near = (colour: Triple, expected: Triple, digits = 9): void => {
  for (const c of CHANNELS) expect(colour[c]).toBeCloseTo(expected[c], digits)
}

const number = (size: number, least = -size) => fc.double({ min: least, max: size, noNaN: true })
const tripleOf = (value: fc.Arbitrary<number>) => fc.tuple(value, value, value)

/** Any base that a job may hold. */
const anyBase: fc.Arbitrary<FilmBase> = fc.record({
  scan: fc.constantFrom('print', 'printing-density', 'negative'),
  clear: tripleOf(number(10)),
  gamma: tripleOf(number(10, 0.05)),
  dyes: fc.tuple(tripleOf(number(10)), tripleOf(number(10)), tripleOf(number(10))),
  list: fc.constant(null),
})

describe('print density', () => {
  it('is 0 at peak, 2.4 at a tenth, and ends at 7.2', () => {
    expect(signalToPrintDensity(1)).toBeCloseTo(0, 12)
    expect(signalToPrintDensity(0.1)).toBeCloseTo(2.4, 12)
    for (const signal of [0.001, 0, -0.2]) expect(signalToPrintDensity(signal)).toBeCloseTo(7.2, 12)
  })

  it('goes back to the signal from 0.001 to 10', () => {
    for (const signal of [0.001, 0.02, 0.5, 1, 1.09, 2.5, 10])
      expect(printDensityToSignal(signalToPrintDensity(signal))).toBeCloseTo(signal, 9)
    expect(printDensityToSignal(-100)).toBe(10)
  })
})

describe('the base stage', () => {
  it('leaves a print exactly as it is, below black and above peak too', () => {
    const colour: Triple = [-0.07, 0.5, 1.09]
    expect(baseColour(colour, PRINT_BASE)).toBe(colour)
    expect(baseColour(colour, base({ clear: triple(1), gamma: triple(2) }))).toBe(colour)
    expect(isPlainBase(negative)).toBe(false)
    expect(isPlainBase(base({ dyes: DYES }))).toBe(false)
  })

  it('restores dyes of a print as products of powers of its signals', () => {
    const [r, g, b] = [0.6, 0.5, 0.3] as const
    near(baseColour([r, g, b], base({ dyes: DYES })), [r ** 2, g * r ** -0.1, b * g ** 0.2])
  })

  it('keeps white white and black black whatever dyes are restored', () => {
    near(baseColour(triple(1), base({ dyes: DYES })), triple(1))
    const [r, g, b] = baseColour(triple(0), base({ dyes: DYES }))
    near([r, g, b], [0.001 ** 2, 0.001 ** 0.9, 0.001 ** 1.2])
    for (const value of [r, g, b]) expect(value).toBeLessThan(2 / 876)
  })

  it('undoes a fading by the inverse of it', () => {
    const inverse = invertMatrix3(DYES)
    if (!inverse) throw new Error('This matrix has an inverse.')
    const colour: Triple = [0.7, 0.4, 0.2]
    near(baseColour(baseColour(colour, base({ dyes: DYES })), base({ dyes: inverse })), colour)
  })

  it('makes a picture of a scan of a negative that it is given', () => {
    const scannedAt = (exposure: number): Triple => {
      const signal = (c: 0 | 1 | 2) =>
        printDensityToSignal(negative.clear[c] + negative.gamma[c] * exposure)
      return [signal(0), signal(1), signal(2)]
    }
    near(baseColour(scannedAt(0), negative), triple(0))
    near(baseColour(scannedAt(590 / 300), negative), triple(1))
    const [r, g, b] = baseColour(scannedAt(1.2), negative)
    expect(r).toBeGreaterThan(0)
    near([r, g, b], triple(r))
  })

  it('reads grey of a negative by printing density as light: codes 95, 470, 685', () => {
    const scan = base({ scan: 'printing-density' })
    near(baseColour(triple(95 / 1023), scan), triple(0))
    near(baseColour(triple(470 / 1023), scan), triple(1.099 * 0.183195 ** 0.45 - 0.099), 5)
    near(baseColour(triple(685 / 1023), scan), triple(1))
  })

  it('rises everywhere with the light of the scene', () => {
    fc.assert(
      fc.property(anyBase, number(3), number(3), (any, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        const isNegative = any.scan === 'negative'
        const through = (signal: number) => baseSignal(baseDensity(signal, any, 1), any, 1)
        const [from, to] = isNegative ? [high, low] : [low, high]
        // A last place or so is lost on the way there and back.
        expect(through(from)).toBeLessThanOrEqual(through(to) + 1e-12 * Math.abs(through(to)))
      }),
      { seed: 1, numRuns: 2000 },
    )
  })

  it('gives a finite colour for any base of a job and any finite colour', () => {
    const any = fc.double({ noNaN: true, noDefaultInfinity: true })
    fc.assert(
      fc.property(anyBase, tripleOf(any), (made, colour) => {
        for (const value of baseColour(colour, made)) expect(Number.isFinite(value)).toBe(true)
      }),
      { seed: 2, numRuns: 5000 },
    )
    for (const scan of ['print', 'printing-density', 'negative'] as const)
      for (const value of [0, -0, -1, Number.MIN_VALUE, Number.MAX_VALUE, -Number.MAX_VALUE])
        for (const c of CHANNELS)
          expect(baseColour(triple(value), base({ scan, dyes: DYES }))[c]).toSatisfy(
            Number.isFinite,
          )
  })

  it('ends with its list, after scan kind and dyes', () => {
    const list = {
      name: 'half',
      steps: [{ kind: 'range', low: [0, 0.1], high: [1, 0.6], clamps: true }],
    } as const
    const colour: Triple = [0.2, 0.5, 0.9]
    near(baseColour(colour, base({ list })), [0.2, 0.35, 0.55])
    const through = baseColour(colour, { ...negative, dyes: DYES })
    near(
      baseColour(colour, { ...negative, dyes: DYES, list }),
      mapTriple(through, (x) => Math.min(0.6, Math.max(0.1, 0.1 + 0.5 * x))),
    )
    expect(isPlainBase(base({ list }))).toBe(false)
    expect(isPlainFilm(base({ list }))).toBe(true)
    // Only a list: nothing before it rounds or clips, below black and above peak as well.
    near(baseColour([-0.07, 1.09, 0], base({ list: matrix })), [-0.07, 1.09, 0], 15)
  })

  it('is the same base only where every number is', () => {
    expect(sameBase(negative, { ...negative, dyes: IDENTITY_MATRIX3 })).toBe(true)
    for (const change of [
      { scan: 'print' },
      { clear: triple(0.1) },
      { gamma: triple(1) },
      { dyes: DYES },
      { list: matrix },
    ] as const)
      expect(sameBase(negative, { ...negative, ...change })).toBe(false)
    const listed = { ...negative, list: matrix }
    expect(sameBase(listed, structuredClone(listed))).toBe(true)
    expect(sameBase(listed, { ...listed, list: { ...matrix, name: 'other' } })).toBe(false)
    expect(sameBase(listed, { ...listed, list: { ...matrix, steps: [] } })).toBe(false)
  })
})

it('the densities on the way are those of the worked example in docs/job-format.md', () => {
  const dyes: Matrix3 = [
    [1.1, -0.1, 0],
    [0, 1, 0],
    [0, 0.05, 0.95],
  ]
  const { scanned, restored } = baseDensities([0.5, 0.35, 0.3], { ...negative, dyes })
  near(scanned, [0.472472, 0.494237, 0.404909], 6)
  near(restored, [0.470296, 0.494237, 0.409375], 6)
})
