import { describe, expect, test } from 'vitest'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { LUMA_WEIGHTS } from '../../src/core/colour/lumaWeights.ts'
import { deliverPicture } from '../../src/core/picture/deliverPicture.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout, MatrixName, Planes, RangeName } from '../../src/core/picture/planes.ts'
import { compositePeaks } from '../../src/core/tolerance/compositePeaks.ts'
import { type PictureLevels, pictureLevels } from '../../src/core/tolerance/pictureLevels.ts'
import {
  EBU_R103_V3,
  PUBLISHED_PROFILES,
  type ToleranceProfile,
} from '../../src/core/tolerance/profile.ts'
import { r103Filter } from '../../src/core/tolerance/r103Filter.ts'
import type { KernelInput } from '../../src/kernel/kernel.ts'
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
  [5, 2],
] as const

const UNFILTERED: ToleranceProfile = { ...EBU_R103_V3, filtered: false }
const NARROW_LUMA: ToleranceProfile = { ...EBU_R103_V3, luma: [-0.01, 1.03] }
const COMPOSITE: ToleranceProfile = { ...UNFILTERED, rgb: null, composite: [-0.2, 1.2] }
const FILTERED_COMPOSITE: ToleranceProfile = { ...EBU_R103_V3, composite: [-0.2, 1.2] }
const PROFILES = [EBU_R103_V3, UNFILTERED, NARROW_LUMA, COMPOSITE, FILTERED_COMPOSITE]

/** Levels are f32 through a table: this far from the reference, for levels of a few units. */
const LEVEL_EPSILON = 1e-4
/** A pixel whose reference level lies this near a limit may be counted on either side. */
const LIMIT_EPSILON = 1e-5

/** How many pixels of the reference have a level within LIMIT_EPSILON of a limit. */
const atLimits = (input: KernelInput, matrix: MatrixName, profile: ToleranceProfile): number => {
  const { planes, coding, grade, framing } = input
  const { r, g, b, width, height } = deliverPicture(planes, coding, grade, framing)
  const filtered = (plane: Float64Array) =>
    profile.filtered ? r103Filter(plane, width, height) : plane
  const rgb = [filtered(r), filtered(g), filtered(b)] as const
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const isNear = (level: number, limits: readonly number[] | null) =>
    limits?.some((limit) => Math.abs(level - limit) < LIMIT_EPSILON * Math.max(1, Math.abs(limit)))
  let count = 0
  for (let i = 0; i < width * height; i++) {
    const [red, green, blue] = rgb.map((plane) => plane[i] ?? 0) as [number, number, number]
    const luma = kr * red + kg * green + kb * blue
    if ([red, green, blue].some((level) => isNear(level, profile.rgb))) count++
    else if (isNear(luma, profile.luma)) count++
    else if (compositePeaks(red, green, blue).some((peak) => isNear(peak, profile.composite)))
      count++
  }
  return count
}

const expectReference = (
  input: KernelInput,
  matrix: MatrixName,
  profile: ToleranceProfile,
): PictureLevels => {
  const { planes, coding, grade, framing } = input
  const levels = kernel.measureLevels(input, matrix, profile)
  const wanted = pictureLevels(deliverPicture(planes, coding, grade, framing), matrix, profile)
  expect(levels.composite !== undefined).toBe(profile.composite !== null)
  for (const channel of ['r', 'g', 'b', 'y', 'composite'] as const)
    for (const end of ['low', 'high'] as const)
      expect(
        Math.abs((levels[channel]?.[end] ?? 0) - (wanted[channel]?.[end] ?? 0)),
        `${channel} ${end} ${JSON.stringify({ coding, grade, framing })}`,
      ).toBeLessThan(LEVEL_EPSILON)
  expect(levels.pixels).toBe(wanted.pixels)
  const counts = ['below', 'above', 'outside'] as const
  if (counts.some((name) => levels[name] !== wanted[name])) {
    const spare = atLimits(input, matrix, profile)
    for (const name of counts)
      expect(Math.abs(levels[name] - wanted[name])).toBeLessThanOrEqual(spare)
  }
  return levels
}

describe.each(LAYOUTS)('a %s picture', (layout) => {
  test.each(DEPTHS)('of %i bits measures what the reference measures', (depth) => {
    const random = seeded(1000 + depth * 10 + LAYOUTS.indexOf(layout))
    for (const range of RANGES)
      for (const matrix of MATRICES)
        for (const [width, height] of SIZES)
          for (const profile of PROFILES) {
            const input: KernelInput = {
              planes: noisePlanes(random, layout, depth, width, height),
              coding: { matrix, range },
              grade: randomGrade(random),
              framing: random() < 0.3 ? randomFraming(random) : IDENTITY_FRAMING,
            }
            expectReference(input, MATRICES[Math.floor(random() * 3)] ?? 'bt709', profile)
          }
  })
})

test('a picture larger than a band measures what the reference measures', () => {
  const random = seeded(41)
  for (const layout of LAYOUTS)
    for (const profile of [EBU_R103_V3, UNFILTERED, NARROW_LUMA, FILTERED_COMPOSITE]) {
      const levels = expectReference(
        {
          planes: shadedPlanes(random, layout, 8, 701, 113),
          coding: { matrix: 'bt709', range: 'narrow' },
          grade: { ...IDENTITY_GRADE, gain: [1.3, 1.3, 1.3], lift: [-0.2, -0.2, -0.2] },
          framing: IDENTITY_FRAMING,
        },
        'bt709',
        profile,
      )
      expect(levels.above).toBeGreaterThan(0)
      expect(levels.below).toBeGreaterThan(0)
    }
})

test('a picture inside its limits has nothing outside', () => {
  const levels = kernel.measureLevels(
    {
      planes: shadedPlanes(seeded(8), '420', 8, 320, 180),
      coding: { matrix: 'bt709', range: 'narrow' },
      grade: { ...IDENTITY_GRADE, gain: [0.6, 0.6, 0.6], lift: [0.1, 0.1, 0.1] },
      framing: IDENTITY_FRAMING,
    },
    'bt709',
    UNFILTERED,
  )
  expect(levels).toMatchObject({ below: 0, above: 0, outside: 0, pixels: 320 * 180 })
})

test('black and peak white are inside the strict narrow range, whatever the gamma', () => {
  const profile = PUBLISHED_PROFILES.find(({ id }) => id === 'narrow-range')
  if (!profile) throw new Error('There is no strict narrow range.')
  const plane = (code: number) => Uint16Array.from({ length: 64 }, (_, i) => (i < 32 ? code : 64))
  for (const matrix of MATRICES)
    for (const gamma of [0.3, 0.7, 1, 1.3, 2.4, 4])
      for (const saturation of [0, 0.8, 1, 1.7]) {
        const levels = kernel.measureLevels(
          {
            planes: {
              width: 8,
              height: 8,
              layout: '444',
              depth: 10,
              samples: [plane(940), new Uint16Array(64).fill(512), new Uint16Array(64).fill(512)],
            },
            coding: { matrix, range: 'narrow' },
            grade: { ...IDENTITY_GRADE, gamma: [gamma, gamma, gamma], saturation },
            framing: IDENTITY_FRAMING,
          },
          matrix,
          profile,
        )
        expect(levels.outside, JSON.stringify({ matrix, gamma, saturation, levels })).toBe(0)
      }
})

/** A grey 'rgb' picture of 8-bit full-range codes. */
const grey = (width: number, height: number, code: (x: number, y: number) => number): Planes => {
  const plane = Uint8Array.from({ length: width * height }, (_, i) =>
    code(i % width, Math.floor(i / width)),
  )
  return { width, height, layout: 'rgb', depth: 8, samples: [plane, plane, plane] }
}

const filteredLevels = (planes: Planes, low: number, high: number): PictureLevels =>
  kernel.measureLevels(
    {
      planes,
      coding: { matrix: 'bt709', range: 'full' },
      grade: IDENTITY_GRADE,
      framing: IDENTITY_FRAMING,
    },
    'bt709',
    { ...EBU_R103_V3, rgb: [low, high], luma: [low, high] },
  )

describe('the filter of EBU R 103 v3', () => {
  // Taps 1 2 3 4 3 2 1 across and 1 2 1 down: the response to one bright pixel, in 64ths.
  const responses = [1, 2, 3, 4, 3, 2, 1].flatMap((across) => [across, 2 * across, across])

  test('spreads one bright pixel over seven columns and three rows', () => {
    const planes = grey(31, 9, (x, y) => (x === 14 && y === 4 ? 255 : 0))
    for (const limit of [0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5]) {
      const { above, r } = filteredLevels(planes, -1, limit / 64)
      expect(above).toBe(responses.filter((response) => response > limit).length)
      expect(r.high).toBeCloseTo(8 / 64, 6)
    }
  })

  test.each([3, 4, 5, 6, 7, 8, 9])('spreads a step over seven columns, at column %i', (start) => {
    // 0 .0625 .1875 .375 .625 .8125 .9375 1 from four columns before the step.
    const step = [0.0625, 0.1875, 0.375, 0.625, 0.8125, 0.9375]
    const planes = grey(start + 9, 3, (x) => (x >= start ? 255 : 0))
    for (const [i, level] of step.entries()) {
      const just = filteredLevels(planes, level - 0.001, level + 0.001)
      expect(just.below).toBe(3 * (start - 3 + i))
      expect(just.above).toBe(3 * (start + 9 - (start - 3 + i) - 1))
      expect(just.outside).toBe(just.below + just.above)
    }
  })

  test('repeats the samples at the edges', () => {
    const levels = filteredLevels(
      grey(3, 1, (x) => (x === 0 ? 255 : 0)),
      -1,
      2,
    )
    // Left to right: (1 2 3 4) 3 2 → 10, then 6, 3 sixteenths.
    expect(levels.r.high).toBeCloseTo(10 / 16, 6)
    expect(levels.r.low).toBeCloseTo(3 / 16, 6)
  })
})

test('grades that are no numbers, endless or tiny end in levels', () => {
  const random = seeded(31)
  for (const value of [Number.NaN, Infinity, -Infinity, 5e-324, 1e-39, 1e300, 0])
    for (const profile of PROFILES)
      for (const field of ['lift', 'gamma', 'gain'] as const) {
        const levels = kernel.measureLevels(
          {
            planes: noisePlanes(random, '422', 10, 21, 6),
            coding: { matrix: 'bt709', range: 'narrow' },
            grade: { ...IDENTITY_GRADE, [field]: [value, 1, value] },
            framing: { ...IDENTITY_FRAMING, zoom: 1.2, pan: value },
          },
          'bt709',
          profile,
        )
        expect(levels.outside).toBeLessThanOrEqual(levels.pixels)
      }
})
