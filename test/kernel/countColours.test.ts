import { expect, test } from 'vitest'
import type { ColourTally } from '../../src/core/census/censusData.ts'
import { type CensusShape, coarserKey } from '../../src/core/census/censusShape.ts'
import { seenSpans } from '../../src/core/census/seenSpans.ts'
import { createColourTally } from '../../src/core/census/tallyColours.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { type Framing, IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout, Planes } from '../../src/core/picture/planes.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { builtKernel } from './builtKernel.ts'
import { noisePlanes, planesOf, randomFraming, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()

/** Keys with their counts, in the order of keys. */
const sorted = (tally: ColourTally | undefined) =>
  [...(tally?.keys ?? [])]
    .map((key, i) => [key, tally?.counts[i]] as const)
    .sort(([a], [b]) => a - b)

const counted = (pictures: readonly Planes[], framing: Framing, most?: number) => {
  const counter = kernel.countColours('narrow', most)
  const reference = createColourTally('narrow', most)
  for (const planes of pictures) {
    const input = {
      planes,
      coding: { matrix: 'bt709', range: 'narrow' } as const,
      grade: IDENTITY_GRADE,
      framing,
    }
    kernel.measureLevels(input, 'bt709', EBU_R103_V3, counter)
    // What other calls do in between must not matter.
    kernel.deliverCodes(input, 'bt709')
    reference.add(planes, seenSpans(framing, planes.width, planes.height))
  }
  return { kernel: counter.tally(), reference: reference.tally() }
}

const LAYOUTS: readonly [Layout, number][] = [
  ['420', 8],
  ['420', 10],
  ['422', 8],
  ['422', 10],
  ['444', 10],
  ['444', 12],
  ['rgb', 8],
  ['rgb', 10],
  ['rgb', 16],
]

for (const [layout, depth] of LAYOUTS)
  test(`the kernel counts the colours the reference counts: ${layout}, ${depth} bit`, () => {
    const random = seeded(depth)
    const pictures = [
      shadedPlanes(random, layout, depth, 71, 33),
      noisePlanes(random, layout, depth, 71, 33),
    ]
    for (const framing of [IDENTITY_FRAMING, randomFraming(random), randomFraming(random)]) {
      const tallies = counted(pictures, framing)
      expect(tallies.kernel?.shape).toEqual(tallies.reference?.shape)
      expect(sorted(tallies.kernel)).toEqual(sorted(tallies.reference))
    }
  })

test('a counter past its most is made coarser, and loses no pixel', () => {
  const random = seeded(4)
  const pictures = [0, 1, 2].map(() => noisePlanes(random, '422', 10, 200, 90))
  const { kernel: tally } = counted(pictures, IDENTITY_FRAMING, 5000)
  expect(tally?.keys.length).toBeLessThanOrEqual(5000)
  expect(tally?.shape.otherDrop).toBeGreaterThan(0)
  expect(tally?.counts.reduce((sum, count) => sum + count, 0)).toBe(3 * 200 * 90)
  expect(new Set(tally?.keys).size).toBe(tally?.keys.length)
})

/** The counts of all pixels, told apart as finely as a shape does. */
const countedBy = (pictures: readonly Planes[], shape: CensusShape) => {
  const exact = createColourTally('narrow', Number.POSITIVE_INFINITY)
  for (const planes of pictures)
    exact.add(planes, seenSpans(IDENTITY_FRAMING, planes.width, planes.height))
  const tally = exact.tally()
  const counts = new Map<number, number>()
  tally?.keys.forEach((key, i) => {
    const coarser = coarserKey(tally.shape, shape, key)
    counts.set(coarser, (counts.get(coarser) ?? 0) + (tally.counts[i] ?? 0))
  })
  return [...counts].sort(([a], [b]) => a - b)
}

test.each([
  ['some, by a hash', 60_000],
  ['many, by a counter for each key', 700],
])('a counter that dropped bits (%s) counts as exact keys without them do', (_, most) => {
  const random = seeded(6)
  const pictures = [0, 1].map(() => noisePlanes(random, '422', 10, 300, 120))
  const { kernel: tally } = counted(pictures, IDENTITY_FRAMING, most)
  if (!tally) throw new Error('no colours')
  expect(sorted(tally)).toEqual(countedBy(pictures, tally.shape))
})

test('a turned picture, all rows of which come at once, finds room for its colours', () => {
  const framing = { ...IDENTITY_FRAMING, rotation: 3, zoom: 1.2 }
  const planes = noisePlanes(seeded(9), '444', 10, 1000, 800)
  const { kernel: tally } = counted([planes], framing, 2000)
  const spans = seenSpans(framing, 1000, 800)
  const seen = spans.reduce((sum, { first, end }) => sum + end - first, 0)
  expect(seen).toBeGreaterThan(2 ** 19)
  expect(tally?.counts.reduce((sum, count) => sum + count, 0)).toBe(seen)
  expect(tally?.keys.length).toBeLessThanOrEqual(2000)
})

test('a later counter ends the one before', () => {
  const before = kernel.countColours('narrow')
  kernel.countColours('narrow')
  const planes = shadedPlanes(seeded(1), '420', 8, 16, 16)
  const input = {
    planes,
    coding: { matrix: 'bt709', range: 'narrow' } as const,
    grade: IDENTITY_GRADE,
    framing: IDENTITY_FRAMING,
  }
  expect(() => kernel.measureLevels(input, 'bt709', EBU_R103_V3, before)).toThrow('ended')
})

test('colours that all have the same place in a line of the table find room', () => {
  // Even codes only, as 4:2:0 chroma between its samples has: one place in eight.
  const random = seeded(8)
  const planes = planesOf('444', 10, 600, 400, () => 2 * Math.floor(random() * 511))
  const tallies = counted([planes], IDENTITY_FRAMING)
  expect(tallies.kernel?.keys.length).toBeGreaterThan(200_000)
  expect(sorted(tallies.kernel)).toEqual(sorted(tallies.reference))
})
