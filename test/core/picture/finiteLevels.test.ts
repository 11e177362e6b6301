import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chromaToCode, signalToCode } from '../../../src/core/colour/codeValues.ts'
import { gradeChannel, gradeColour, HIGHEST_LEVEL } from '../../../src/core/colour/grade.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { rgbToYCbCr } from '../../../src/core/colour/yCbCr.ts'
import { LARGEST_NUMBER, SMALLEST_GAMMA } from '../../../src/core/job/limits.ts'
import { deliverPicture } from '../../../src/core/picture/deliverPicture.ts'
import { encodePicture } from '../../../src/core/picture/encodePicture.ts'
import type { Planes } from '../../../src/core/picture/planes.ts'
import { pictureLevels } from '../../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'

const sized = fc.double({ min: -LARGEST_NUMBER, max: LARGEST_NUMBER, noNaN: true })
const number = fc.oneof(
  sized,
  fc.double({ min: -2, max: 2, noNaN: true }),
  fc.constantFrom(0, 1, 5e-324, -5e-324, 1e-310, 1e-40, LARGEST_NUMBER, -LARGEST_NUMBER),
)
const gamma = fc.oneof(
  fc.double({ min: SMALLEST_GAMMA, max: 0.05, noNaN: true }),
  fc.double({ min: 0.05, max: 10, noNaN: true }),
  fc.constantFrom(SMALLEST_GAMMA, LARGEST_NUMBER),
)
const three = (each: fc.Arbitrary<number>): fc.Arbitrary<Triple> => fc.tuple(each, each, each)

/** Any grade that commands and job files let pass. */
const anyGrade = fc.record({
  lift: three(number),
  gamma: three(gamma),
  gain: three(number),
  saturation: number.map(Math.abs),
})

const MATRICES = ['bt601', 'bt709', 'bt2020'] as const
const isCode = (code: number) => Number.isInteger(code) && code >= 0 && code <= 1023

describe('with any grade a job may hold', () => {
  it('the level of any colour is finite, and its codes are codes', () => {
    fc.assert(
      fc.property(anyGrade, three(number), (grade, colour) => {
        const graded = gradeColour(colour, grade)
        const yCbCr = MATRICES.flatMap((matrix) => rgbToYCbCr(graded, matrix))
        expect([...graded, ...yCbCr].every(Number.isFinite)).toBe(true)
        const codes = yCbCr.flatMap((value) => [
          signalToCode(value, 10, 'narrow'),
          chromaToCode(value, 10, 'full'),
        ])
        expect(codes.every(isCode)).toBe(true)
      }),
      { seed: 31, numRuns: 3000 },
    )
  })

  it('what is measured of a picture is finite, and a blown-up one is outside', () => {
    const code = fc.integer({ min: 0, max: 1023 })
    const plane = fc.uint16Array({ minLength: 64, maxLength: 64, max: 1023 })
    const framing = fc.record({
      zoom: fc.double({ min: 0.25, max: 8, noNaN: true }),
      pan: fc.double({ min: -1, max: 1, noNaN: true }),
      tilt: fc.double({ min: -1, max: 1, noNaN: true }),
      rotation: fc.double({ min: -180, max: 180, noNaN: true }),
      squeeze: fc.double({ min: 0.25, max: 4, noNaN: true }),
      blanking: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
    })
    fc.assert(
      fc.property(anyGrade, plane, code, framing, (grade, samples, chroma, view) => {
        const flat = new Uint16Array(64).fill(chroma)
        const planes: Planes = {
          width: 8,
          height: 8,
          layout: '444',
          depth: 10,
          samples: [samples, flat, flat],
        }
        const picture = deliverPicture(planes, { matrix: 'bt709', range: 'narrow' }, grade, view)
        const levels = pictureLevels(picture, 'bt709', EBU_R103_V3)
        const extremes = [levels.r, levels.g, levels.b, levels.y]
        const lows = extremes.map(({ low }) => low)
        const highs = extremes.map(({ high }) => high)
        expect([...lows, ...highs].every(Number.isFinite)).toBe(true)
        expect(levels.above > 0).toBe(Math.max(...highs) > EBU_R103_V3.luma[1])
        expect(levels.below > 0).toBe(Math.min(...lows) < EBU_R103_V3.luma[0])
      }),
      { seed: 32, numRuns: 1000 },
    )
  })
})

it('a power of a level ends at the highest level, and only there', () => {
  expect(gradeChannel(1, 0, SMALLEST_GAMMA, 2)).toBe(HIGHEST_LEVEL)
  expect(gradeChannel(1, 0, 1 / 31, 2)).toBe(HIGHEST_LEVEL)
  expect(gradeChannel(1, 0, 1 / 29, 2) / 2 ** 29).toBeCloseTo(1, 12)
})

describe('codes', () => {
  it.each([
    [Number.NaN, 64, 512],
    [Infinity, 1023, 1023],
    [-Infinity, 0, 0],
    [5e-324, 64, 512],
    [-5e-324, 64, 512],
    [1e300, 1023, 1023],
  ])('of %d are a code of the scale: %i, as chroma %i', (signal, luma, chroma) => {
    expect(signalToCode(signal, 10, 'narrow')).toBe(luma)
    expect(chromaToCode(signal, 10, 'narrow')).toBe(chroma)
  })

  it('of a pixel without numbers are black, and of an endless white are white', () => {
    const levels = Float64Array.of(Number.NaN, Infinity, -Infinity, 1)
    const picture = { width: 4, height: 1, r: levels, g: levels, b: levels }
    const { samples } = encodePicture(picture, 'bt709', 10)
    expect(samples.map((plane) => [...plane])).toEqual([
      [64, 1023, 0, 940],
      [512, 512, 512, 512],
      [512, 512, 512, 512],
    ])
  })
})
