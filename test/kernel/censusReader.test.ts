import { expect, test } from 'vitest'
import { buildCensus } from '../../src/core/census/buildCensus.ts'
import { createCensusReader } from '../../src/core/census/censusVerdict.ts'
import { seenSpans } from '../../src/core/census/seenSpans.ts'
import { createColourTally } from '../../src/core/census/tallyColours.ts'
import { IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Layout } from '../../src/core/picture/planes.ts'
import { EBU_R103_V3, type ToleranceProfile } from '../../src/core/tolerance/profile.ts'
import { builtKernel } from './builtKernel.ts'
import { noisePlanes, randomGrade, seeded, shadedPlanes } from './randomPictures.ts'

const kernel = await builtKernel()
const CODING = { matrix: 'bt709', range: 'narrow' } as const
const COMPOSITE: ToleranceProfile = { ...EBU_R103_V3, rgb: null, composite: [-0.33, 1.33] }

const censusOf = (seed: number, layout: Layout, depth: number, most?: number) => {
  const random = seeded(seed)
  const tally = createColourTally('narrow', most)
  const spans = seenSpans(IDENTITY_FRAMING, 90, 70)
  for (let i = 0; i < 3; i++) tally.add(shadedPlanes(random, layout, depth, 90, 70), spans)
  tally.add(noisePlanes(random, layout, depth, 90, 70), spans)
  const counted = tally.tally()
  if (!counted) throw new Error('no colours')
  return buildCensus(counted, CODING)
}

test('the kernel tells of a census what the reference tells, to the last bit', () => {
  const censuses = [censusOf(1, '420', 8), censusOf(2, '422', 10), censusOf(3, 'rgb', 10)]
  const both = censuses.map(
    (census) => [kernel.censusReader(census), createCensusReader(census)] as const,
  )
  const random = seeded(9)
  for (let i = 0; i < 60; i++) {
    const grade = i === 0 ? IDENTITY_GRADE : randomGrade(random)
    const profile = i % 4 === 3 ? COMPOSITE : EBU_R103_V3
    for (const [fast, reference] of both)
      expect(fast(grade, profile)).toEqual(reference(grade, profile))
  }
})

test('of a census made coarser the kernel tells bounds, as near as the reference does', () => {
  const exact = createCensusReader(censusOf(4, '422', 10))
  const coarse = censusOf(4, '422', 10, 3000)
  const fast = kernel.censusReader(coarse)
  const reference = createCensusReader(coarse)
  const random = seeded(10)
  for (let i = 0; i < 60; i++) {
    const grade = randomGrade(random)
    const profile = i % 4 === 3 ? COMPOSITE : EBU_R103_V3
    const truth = exact(grade, profile)
    const told = fast(grade, profile)
    const other = reference(grade, profile)
    expect(told.outsideAtLeast).toBeLessThanOrEqual(truth.outsideAtLeast)
    expect(told.outsideAtMost).toBeGreaterThanOrEqual(truth.outsideAtMost)
    // They round differently: a box that only just straddles a limit may fall either way.
    expect(Math.abs(told.outsideAtLeast - other.outsideAtLeast)).toBeLessThan(truth.pixels / 1000)
    expect(Math.abs(told.outsideAtMost - other.outsideAtMost)).toBeLessThan(truth.pixels / 1000)
    for (const figure of ['r', 'g', 'b', 'y', 'composite'] as const) {
      const bounds = told[figure]
      const ends = truth[figure]
      expect(bounds === undefined).toBe(ends === undefined)
      if (!bounds || !ends) continue
      expect(bounds.low).toBeLessThanOrEqual(ends.low)
      expect(bounds.high).toBeGreaterThanOrEqual(ends.high)
      expect(bounds.low).toBeCloseTo(other[figure]?.low ?? 0, 5)
      expect(bounds.high).toBeCloseTo(other[figure]?.high ?? 0, 5)
    }
  }
})

test('other calls on the kernel in between do not disturb a census', () => {
  const census = censusOf(5, '420', 8)
  const read = kernel.censusReader(census)
  const before = read(IDENTITY_GRADE, EBU_R103_V3)
  const planes = noisePlanes(seeded(3), '420', 8, 400, 300)
  kernel.measureLevels(
    { planes, coding: CODING, grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING },
    'bt709',
    EBU_R103_V3,
    kernel.countColours('narrow'),
  )
  expect(read(IDENTITY_GRADE, EBU_R103_V3)).toEqual(before)
})
