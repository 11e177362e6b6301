import { expect, test } from 'vitest'
import { buildCensus } from '../../../src/core/census/buildCensus.ts'
import { createCensusReader } from '../../../src/core/census/censusVerdict.ts'
import { seenSpans } from '../../../src/core/census/seenSpans.ts'
import { createColourTally } from '../../../src/core/census/tallyColours.ts'
import type { Grade } from '../../../src/core/colour/grade.ts'
import { type FilmBase, PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { gradePicture } from '../../../src/core/picture/gradePicture.ts'
import type { Coding, Layout, Planes } from '../../../src/core/picture/planes.ts'
import type { RgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { type PictureLevels, pictureLevels } from '../../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3, type ToleranceProfile } from '../../../src/core/tolerance/profile.ts'
import { randomGrade, seeded, shadedPlanes } from '../../kernel/randomPictures.ts'
import { MADE_LISTS } from '../../support/madeLists.ts'

const UNFILTERED: ToleranceProfile = { ...EBU_R103_V3, filtered: false }
const COMPOSITE: ToleranceProfile = { ...UNFILTERED, rgb: null, composite: [-0.33, 1.33] }
const CODING: Coding = { matrix: 'bt709', range: 'narrow' }

const FADED_NEGATIVE: FilmBase = {
  scan: 'negative',
  clear: [0.3, 0.6, 0.8],
  gamma: [0.6, 0.62, 0.66],
  dyes: [
    [1.2, -0.1, 0.05],
    [-0.05, 1.1, -0.1],
    [0, -0.1, 1.4],
  ],
  list: null,
}

const madeList = (name: string): FilmBase['list'] => MADE_LISTS[name] ?? null

/** All decoded pictures measured one by one by the reference. */
const bruteForce = (
  pictures: readonly RgbPicture[],
  { matrix }: Coding,
  grade: Grade,
  profile: ToleranceProfile,
) => {
  const all = pictures.map((picture) =>
    pictureLevels(gradePicture(picture, grade), matrix, profile),
  )
  const least = (figure: 'r' | 'g' | 'b' | 'y') => Math.min(...all.map((each) => each[figure].low))
  const most = (figure: 'r' | 'g' | 'b' | 'y') => Math.max(...all.map((each) => each[figure].high))
  const extremes = (figure: 'r' | 'g' | 'b' | 'y') => ({ low: least(figure), high: most(figure) })
  const total = (of: (levels: PictureLevels) => number) =>
    all.reduce((sum, each) => sum + of(each), 0)
  return {
    r: extremes('r'),
    g: extremes('g'),
    b: extremes('b'),
    y: extremes('y'),
    ...(profile.composite && {
      composite: {
        low: Math.min(...all.map(({ composite }) => composite?.low ?? 0)),
        high: Math.max(...all.map(({ composite }) => composite?.high ?? 0)),
      },
    }),
    outside: total(({ outside }) => outside),
    pixels: total(({ pixels }) => pixels),
  }
}

const censusOf = (pictures: readonly Planes[], coding: Coding, most?: number) => {
  const tally = createColourTally(coding.range, most)
  for (const planes of pictures)
    tally.add(planes, seenSpans(IDENTITY_FRAMING, planes.width, planes.height))
  const counted = tally.tally()
  if (!counted) throw new Error('no colours')
  return createCensusReader(buildCensus(counted, coding))
}

const CASES: readonly { name: string; layout: Layout; depth: number; coding: Coding }[] = [
  { name: '4:2:0, 8 bit', layout: '420', depth: 8, coding: CODING },
  { name: '4:2:2, 10 bit', layout: '422', depth: 10, coding: CODING },
  {
    name: '4:4:4, 8 bit, BT.601, full',
    layout: '444',
    depth: 8,
    coding: { matrix: 'bt601', range: 'full' },
  },
  {
    name: 'R′G′B′, 10 bit, BT.2020',
    layout: 'rgb',
    depth: 10,
    coding: { matrix: 'bt2020', range: 'full' },
  },
  {
    name: 'a negative with its dyes restored',
    layout: '422',
    depth: 10,
    coding: { ...CODING, base: FADED_NEGATIVE },
  },
  ...Object.entries(MADE_LISTS).map(([name, list]) => ({
    name: `${name} in the base`,
    layout: '422' as const,
    depth: 10,
    coding: { ...CODING, base: { ...PRINT_BASE, list } },
  })),
  {
    name: 'a negative with its dyes restored, then a cube',
    layout: '444',
    depth: 8,
    coding: {
      ...CODING,
      base: { ...FADED_NEGATIVE, list: madeList('a cube of 33 by tetrahedra') },
    },
  },
]

for (const { name, layout, depth, coding } of CASES)
  test(`a census tells what every pixel would, to the last bit: ${name}`, () => {
    const random = seeded(depth + layout.length)
    const pictures = [0, 1, 2].map(() => shadedPlanes(random, layout, depth, 67, 50))
    const decoded = pictures.map((planes) => decodePlanes(planes, coding))
    const census = censusOf(pictures, coding)
    let someOutside = 0
    // A base makes levels far past peak, where f32 tells less: more is settled by the reference.
    for (let i = 0; i < (coding.base ? 25 : 120); i++) {
      const grade = randomGrade(random)
      const profile = i % 3 === 2 ? COMPOSITE : UNFILTERED
      const brute = bruteForce(decoded, coding, grade, profile)
      const { outsideAtLeast, outsideAtMost, ...rest } = census(grade, profile)
      const { outside, ...others } = brute
      expect({ ...rest, outsideAtLeast, outsideAtMost }).toEqual({
        ...others,
        outsideAtLeast: outside,
        outsideAtMost: outside,
      })
      if (outside > 0 && outside < brute.pixels) someOutside++
    }
    expect(someOutside).toBeGreaterThan(10)
  })

for (const { name, layout, depth, coding } of CASES)
  test(`a census made coarser bounds what every pixel would tell: ${name}`, () => {
    const random = seeded(depth + layout.length)
    const pictures = [0, 1].map(() => shadedPlanes(random, layout, depth, 67, 50))
    const decoded = pictures.map((planes) => decodePlanes(planes, coding))
    const census = censusOf(pictures, coding, 700)
    for (let i = 0; i < 60; i++) {
      const grade = randomGrade(random)
      const profile = i % 3 === 2 ? COMPOSITE : UNFILTERED
      const brute = bruteForce(decoded, coding, grade, profile)
      const told = census(grade, profile)
      expect(told.outsideAtLeast).toBeLessThanOrEqual(brute.outside)
      expect(told.outsideAtMost).toBeGreaterThanOrEqual(brute.outside)
      expect(told.pixels).toBe(brute.pixels)
      for (const figure of ['r', 'g', 'b', 'y'] as const) {
        expect(told[figure].low).toBeLessThanOrEqual(brute[figure].low)
        expect(told[figure].high).toBeGreaterThanOrEqual(brute[figure].high)
      }
    }
  })
