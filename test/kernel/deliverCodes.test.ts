import { describe, expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { encodePicture } from '../../src/core/picture/encodePicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout, MatrixName, RangeName } from '../../src/core/picture/planes.ts'
import type { CodePicture, KernelInput } from '../../src/kernel/kernel.ts'
import { builtKernel } from './builtKernel.ts'
import { noisePlanes, randomFraming, randomGrade, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()

const LAYOUTS: readonly Layout[] = ['420', '422', '444', 'rgb']
const DEPTHS = [8, 10, 12, 16] as const
const RANGES: readonly RangeName[] = ['narrow', 'full']
const MATRICES: readonly MatrixName[] = ['bt601', 'bt709', 'bt2020']
const SIZES = [
  [37, 23],
  [1, 1],
  [2, 3],
  [16, 5],
] as const

/** The largest difference between the kernel's codes and the reference's, in codes. */
const largestDifference = (input: KernelInput, matrix: MatrixName): number => {
  const { planes, coding, grade, framing } = input
  const codes = kernel.deliverCodes(input, matrix)
  const reference = encodePicture(deliverPicture(planes, coding, grade, framing), matrix, 10)
  let largest = 0
  for (const [i, plane] of [codes.y, codes.cb, codes.cr].entries()) {
    expect(plane.length).toBe(reference.samples[i]?.length)
    plane.forEach((code, at) => {
      largest = Math.max(largest, Math.abs(code - (reference.samples[i]?.[at] ?? Number.NaN)))
    })
  }
  return largest
}

describe.each(LAYOUTS)('a %s picture', (layout) => {
  test.each(DEPTHS)('of %i bits is delivered within one code of the reference', (depth) => {
    const random = seeded(depth * 10 + LAYOUTS.indexOf(layout))
    for (const range of RANGES)
      for (const matrix of MATRICES)
        for (const [width, height] of SIZES)
          for (const isFramed of [false, true]) {
            const input = {
              planes: noisePlanes(random, layout, depth, width, height),
              coding: { matrix, range },
              grade: randomGrade(random),
              framing: isFramed ? randomFraming(random) : IDENTITY_FRAMING,
            }
            const target = MATRICES[Math.floor(random() * 3)] ?? 'bt709'
            expect(
              largestDifference(input, target),
              JSON.stringify({ ...input, planes: 0 }),
            ).toBeLessThanOrEqual(1)
          }
  })

  test('without a grade keeps the codes of the reference to within one', () => {
    const random = seeded(5)
    for (const depth of DEPTHS)
      expect(
        largestDifference(
          {
            planes: shadedPlanes(random, layout, depth, 61, 34),
            coding: { matrix: 'bt709', range: 'narrow' },
            grade: IDENTITY_GRADE,
            framing: IDENTITY_FRAMING,
          },
          'bt709',
        ),
      ).toBeLessThanOrEqual(1)
  })
})

test('a picture larger than a band is delivered as the reference delivers it', () => {
  const random = seeded(77)
  for (const layout of LAYOUTS)
    for (const framing of [
      IDENTITY_FRAMING,
      { ...IDENTITY_FRAMING, zoom: 0.7, pan: 0.1, tilt: -0.3 },
      { ...IDENTITY_FRAMING, zoom: 2.5, pan: 0.3, tilt: 0.2, squeeze: 1.3, blanking: 0.3 },
      { ...IDENTITY_FRAMING, zoom: 0.9, rotation: -11, blanking: -0.1 },
    ])
      expect(
        largestDifference(
          {
            planes: shadedPlanes(random, layout, 10, 701, 113),
            coding: { matrix: 'bt709', range: 'narrow' },
            grade: randomGrade(random),
            framing,
          },
          'bt709',
        ),
      ).toBeLessThanOrEqual(1)
})

test('gammas from 0.1 to 5 keep the codes within one of the reference', () => {
  const random = seeded(101)
  for (const gamma of [0.1, 0.2, 0.5, 3, 4, 5])
    for (const layout of LAYOUTS)
      expect(
        largestDifference(
          {
            planes: shadedPlanes(random, layout, 8, 64, 36),
            coding: { matrix: 'bt709', range: 'narrow' },
            grade: { ...IDENTITY_GRADE, gamma: [gamma, gamma, gamma], saturation: 0.8 },
            framing: IDENTITY_FRAMING,
          },
          'bt709',
        ),
        `gamma ${gamma}, ${layout}`,
      ).toBeLessThanOrEqual(1)
})

test('a neutral ramp keeps black, and levels just above it, under a high gamma', () => {
  const input: KernelInput = {
    planes: {
      width: 1024,
      height: 1,
      layout: 'rgb',
      depth: 10,
      samples: [0, 1, 2].map(() => Uint16Array.from({ length: 1024 }, (_, i) => i)) as never,
    },
    coding: { matrix: 'bt709', range: 'narrow' },
    grade: { ...IDENTITY_GRADE, gamma: [5, 5, 5] },
    framing: IDENTITY_FRAMING,
  }
  expect(largestDifference(input, 'bt709')).toBeLessThanOrEqual(1)
  expect(kernel.deliverCodes(input, 'bt709').y[64]).toBe(64)
})

test('nearly all codes of a shaded picture are those of the reference', () => {
  const input: KernelInput = {
    planes: shadedPlanes(seeded(12), '422', 10, 240, 135),
    coding: { matrix: 'bt709', range: 'narrow' },
    grade: {
      lift: [0.02, 0.01, 0.015],
      gamma: [1.15, 1.1, 1.2],
      gain: [1.02, 1, 1.05],
      saturation: 1.1,
    },
    framing: IDENTITY_FRAMING,
  }
  const { planes, coding, grade, framing } = input
  const codes = kernel.deliverCodes(input, 'bt709')
  const reference = encodePicture(deliverPicture(planes, coding, grade, framing), 'bt709', 10)
  const different = [codes.y, codes.cb, codes.cr].map(
    (plane, i) => plane.filter((code, at) => code !== reference.samples[i]?.[at]).length,
  )
  expect(Math.max(...different)).toBeLessThan(codes.y.length / 300)
})

describe('the codes', () => {
  const random = seeded(9)
  const input = (width: number, height: number): KernelInput => ({
    planes: shadedPlanes(random, '420', 8, width, height),
    coding: { matrix: 'bt709', range: 'narrow' },
    grade: randomGrade(random),
    framing: IDENTITY_FRAMING,
  })

  test('are written into a picture of their size', () => {
    const first = kernel.deliverCodes(input(40, 20), 'bt709')
    const next = input(40, 20)
    const fresh = kernel.deliverCodes(next, 'bt709')
    expect(kernel.deliverCodes(next, 'bt709', first)).toBe(first)
    expect(first).toEqual(fresh)
  })

  test('are not written into a picture of another size', () => {
    const other: CodePicture = kernel.deliverCodes(input(20, 40), 'bt709')
    const before = structuredClone(other)
    expect(kernel.deliverCodes(input(40, 20), 'bt709', other)).not.toBe(other)
    expect(other).toEqual(before)
  })

  test('of one picture do not depend on the pictures before it', async () => {
    const wanted = input(33, 17)
    const alone = (await builtKernel()).deliverCodes(wanted, 'bt2020')
    kernel.deliverCodes(
      { ...input(90, 70), framing: { ...IDENTITY_FRAMING, zoom: 0.5, pan: 0.2 } },
      'bt709',
    )
    kernel.deliverCodes(input(2, 2), 'bt709')
    expect(kernel.deliverCodes(wanted, 'bt2020')).toEqual(alone)
  })
})

test('grades and framings that are no numbers, endless or tiny end in codes', () => {
  const random = seeded(3)
  const odd = [Number.NaN, Infinity, -Infinity, 5e-324, -5e-324, 1e-39, 1e300, -1e300, 0]
  for (const value of odd) {
    for (const field of ['lift', 'gamma', 'gain'] as const) {
      const codes = kernel.deliverCodes(
        {
          planes: noisePlanes(random, '420', 8, 19, 7),
          coding: { matrix: 'bt709', range: 'narrow' },
          grade: { ...IDENTITY_GRADE, [field]: [value, 1, value] },
          framing: IDENTITY_FRAMING,
        },
        'bt709',
      )
      expect(Math.max(...codes.y, ...codes.cb, ...codes.cr)).toBeLessThanOrEqual(1023)
    }
    for (const field of ['zoom', 'pan', 'tilt'] as const) {
      const codes = kernel.deliverCodes(
        {
          planes: noisePlanes(random, '420', 8, 19, 7),
          coding: { matrix: 'bt709', range: 'narrow' },
          grade: { ...IDENTITY_GRADE, saturation: value },
          framing: { ...IDENTITY_FRAMING, [field]: value },
        },
        'bt709',
      )
      expect(codes.y.length).toBe(19 * 7)
    }
  }
})
