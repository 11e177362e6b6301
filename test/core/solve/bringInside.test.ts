import { describe, expect, it } from 'vitest'
import type { WeightedColours } from '../../../src/core/census/weightedColours.ts'
import { displayedRgbToLab } from '../../../src/core/colour/cieLab.ts'
import { deltaE2000 } from '../../../src/core/colour/deltaE2000.ts'
import {
  type Grade,
  gradeColour,
  IDENTITY_GRADE,
  mixGrade,
} from '../../../src/core/colour/grade.ts'
import { type Triple, triple } from '../../../src/core/colour/triple.ts'
import { rgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { bringInside } from '../../../src/core/solve/bringInside.ts'
import { pictureLevels } from '../../../src/core/tolerance/pictureLevels.ts'
import {
  COMPOSITE_625,
  EBU_R103_V3,
  PUBLISHED_PROFILES,
  type ToleranceProfile,
} from '../../../src/core/tolerance/profile.ts'
import { readStill } from '../../support/readStill.ts'
import { seeded } from '../../support/seeded.ts'

const STRICT = PUBLISHED_PROFILES.find(({ id }) => id === 'narrow-range') as ToleranceProfile

/** Every fourth pixel of a still, in steps that no column has for itself. */
const fewPixels = (name: string): readonly Triple[] => {
  const { width, height, pixels } = readStill(`${name}-128`)
  return Array.from({ length: (width * height) / 4 }, (_, k) => {
    const i = 4 * k + (Math.floor((4 * k) / width) % 4)
    return pixels[i] as Triple
  })
}

/** Means of at most `most` runs of colours that lie near each other, as the census makes them. */
const weigh = (pixels: readonly Triple[], most = 4096): WeightedColours => {
  const order = (pixel: Triple): number => {
    let key = 0
    for (let bit = 7; bit >= 0; bit--)
      for (const level of pixel) key = key * 2 + ((Math.round(level * 255) >> bit) & 1)
    return key
  }
  const sorted = pixels.map((pixel) => ({ pixel, key: order(pixel) }))
  sorted.sort((a, b) => a.key - b.key)
  const distinct: { pixel: Triple; key: number; count: number }[] = []
  for (const each of sorted) {
    const last = distinct.at(-1)
    if (last?.key === each.key) last.count++
    else distinct.push({ ...each, count: 1 })
  }
  const run = Math.ceil(distinct.length / most)
  const count = Math.ceil(distinct.length / run)
  const colours = new Float64Array(count * 3)
  const weights = new Float64Array(count)
  for (const [i, each] of distinct.entries()) {
    const place = Math.floor(i / run)
    weights[place] = (weights[place] as number) + each.count
    const share = each.count / (weights[place] as number)
    for (const c of [0, 1, 2] as const) {
      const mean = colours[place * 3 + c] as number
      colours[place * 3 + c] = mean + share * (each.pixel[c] - mean)
    }
  }
  return { colours, weights }
}

/** Part of the pixels outside, by looking at each, unfiltered. */
const shareOf = (pixels: readonly Triple[], profile: ToleranceProfile) => (grade: Grade) => {
  const picture = rgbPicture(pixels.length, 1)
  for (const [i, pixel] of pixels.entries()) {
    const [r, g, b] = gradeColour(pixel, grade)
    picture.r[i] = r
    picture.g[i] = g
    picture.b[i] = b
  }
  return pictureLevels(picture, 'bt709', { ...profile, filtered: false }).outside / pixels.length
}

/** Mean ΔE00 between two grades of all pixels, or of each of so many. */
const meanDeltaE = (pixels: readonly Triple[], a: Grade, b: Grade, each = 1): number => {
  const some = pixels.filter((_, i) => i % each === 0)
  const labOf = (pixel: Triple, grade: Grade) => displayedRgbToLab(gradeColour(pixel, grade))
  return some.reduce((sum, p) => sum + deltaE2000(labOf(p, a), labOf(p, b)), 0) / some.length
}

const ask = (pixels: readonly Triple[], grade: Grade, profile: ToleranceProfile) =>
  bringInside({
    colours: weigh(pixels),
    grade,
    matrix: 'bt709',
    profile,
    shareOutside: shareOf(pixels, profile),
  })

const brought = (pixels: readonly Triple[], grade: Grade, profile: ToleranceProfile) => {
  const result = ask(pixels, grade, profile)
  if (!result.ok) throw new Error(result.problems[0].says)
  return result.value
}

const refused = (pixels: readonly Triple[], grade: Grade, profile: ToleranceProfile) => {
  const result = ask(pixels, grade, profile)
  return result.ok ? undefined : result.problems[0]
}

const graded = (by: Partial<Grade>): Grade => ({ ...IDENTITY_GRADE, ...by })

const TOO_BRIGHT = graded({ gain: triple(1.25) })
const TOO_DARK = graded({ lift: triple(-0.12) })
const TOO_COLOURFUL = graded({ saturation: 2 })
const TINTED = graded({ gain: [1.35, 1, 0.9] })
const ALL_AT_ONCE: Grade = {
  lift: [-0.1, -0.05, -0.08],
  gamma: [1.2, 1.1, 1],
  gain: [1.3, 1.2, 1.1],
  saturation: 1.4,
}

const CASES = [
  { still: 'astronaut', grade: TOO_BRIGHT, profile: EBU_R103_V3 },
  { still: 'coffee', grade: TOO_DARK, profile: STRICT },
  { still: 'coffee', grade: TOO_COLOURFUL, profile: COMPOSITE_625 },
  { still: 'astronaut', grade: TINTED, profile: STRICT },
  { still: 'dust-bowl-home', grade: ALL_AT_ONCE, profile: STRICT },
] as const

describe.each(CASES)('$still inside $profile.name', ({ still, grade, profile }) => {
  const pixels = fewPixels(still)
  const answer = brought(pixels, grade, profile)
  const passes = (tried: Grade) => shareOf(pixels, profile)(tried) <= profile.area

  it('passes by every pixel, and hardly more than that', () => {
    expect(passes(grade)).toBe(false)
    expect(answer.shareBefore).toBe(shareOf(pixels, profile)(grade))
    expect(answer.shareAfter).toBe(shareOf(pixels, profile)(answer.grade))
    expect(passes(answer.grade)).toBe(true)
    expect(passes(mixGrade(answer.grade, grade, 0.03))).toBe(false)
  })

  it('keeps contrast and colour', () => {
    for (const c of [0, 1, 2] as const) {
      const slope = answer.grade.gain[c] - answer.grade.lift[c]
      expect(slope).toBeGreaterThan((grade.gain[c] - grade.lift[c]) / 3)
    }
    expect(answer.grade.saturation).toBeGreaterThan(grade.saturation / 3)
  })

  it('says what it changed, in the decimals of the bench', () => {
    const told = answer.changed.flatMap(({ term, channel, from, to }) => {
      if (term === 'saturation') return [[grade.saturation, answer.grade.saturation, from, to]]
      if (channel === undefined) return []
      return [[grade[term][channel], answer.grade[term][channel], from, to]]
    })
    for (const [before, after, from, to] of told) expect([before, after]).toEqual([from, to])
    for (const term of ['lift', 'gamma', 'gain'] as const)
      for (const c of [0, 1, 2] as const) {
        const isTold = answer.changed.some(
          (each) => each.term === term && (each.channel === undefined || each.channel === c),
        )
        expect(isTold).toBe(answer.grade[term][c] !== grade[term][c])
        const decimals = term === 'gamma' ? 3 : 4
        const value = answer.grade[term][c]
        if (isTold) expect(Number(value.toFixed(decimals))).toBe(value)
      }
  })

  it('changes no more than the best of a grid over two numbers', () => {
    expect(answer.meanDeltaE).toBeCloseTo(meanDeltaE(pixels, grade, answer.grade), 1)
    const shifted = (values: Triple, by: number): Triple => [
      values[0] + by,
      values[1] + by,
      values[2] + by,
    ]
    const steps = Array.from({ length: 13 }, (_, k) => k)
    const tried = steps.flatMap((i) =>
      steps.flatMap((j) => [
        { ...grade, gain: shifted(grade.gain, -0.04 * i), saturation: grade.saturation - 0.08 * j },
        { ...grade, gain: shifted(grade.gain, -0.04 * i), lift: shifted(grade.lift, 0.012 * j) },
        { ...grade, lift: shifted(grade.lift, 0.012 * i), gamma: shifted(grade.gamma, -0.03 * j) },
      ]),
    )
    const every = pixels.filter((_, i) => i % 4 === 0)
    const roughly = shareOf(every, { ...profile, area: 0 })
    let least = Infinity
    for (const each of tried) {
      // A quarter of the pixels tells that most of them do not pass.
      if (roughly(each) > profile.area + 0.02) continue
      const cost = meanDeltaE(pixels, grade, each, 4)
      if (cost < least && passes(each)) least = cost
    }
    expect(least).toBeLessThan(Infinity)
    expect(meanDeltaE(pixels, grade, answer.grade, 4)).toBeLessThan(least * 1.03)
  })
})

it('leaves a picture that passes as it is', () => {
  const grade = graded({ saturation: 1.1 })
  const answer = brought(fewPixels('airplane-from-above'), grade, EBU_R103_V3)
  expect(answer.grade).toBe(grade)
  expect(answer.changed).toEqual([])
  expect(answer.meanDeltaE).toBe(0)
})

/** Many greys, and pairs of hues that lie opposite each other about a middle grey. */
const greysAndHues = (): readonly Triple[] => {
  const random = seeded(5)
  const greys = Array.from({ length: 4000 }, () => triple(0.1 + 0.8 * random()))
  const hues = Array.from({ length: 400 }, (): Triple => {
    const around = [0.25 * random(), -0.25 * random(), 0.4 * random() - 0.2]
    return [0.5 + (around[0] ?? 0), 0.5 + (around[1] ?? 0), 0.5 + (around[2] ?? 0)]
  })
  return [...greys, ...hues, ...hues.map(([r, g, b]): Triple => [1 - r, 1 - g, 1 - b])]
}

it('changes saturation alone where colours are too strong and greys are right, the same each time', () => {
  const pixels = greysAndHues()
  const before = graded({ saturation: 2.4 })
  const answer = brought(pixels, before, STRICT)
  expect(answer.changed.map(({ term }) => term)).toEqual(['saturation'])
  // The most that passes, a thousandth apart.
  const share = shareOf(pixels, STRICT)
  const { saturation } = answer.grade
  expect(share({ ...before, saturation })).toBe(0)
  expect(share({ ...before, saturation: saturation + 0.001 })).toBeGreaterThan(0)
  expect(brought(pixels, before, STRICT)).toEqual(answer)
})

it('keeps the signal above peak white that the limits allow, and its steps', () => {
  const ramp = Array.from({ length: 4000 }, (_, i) => triple(i / 4000))
  const { grade } = brought(ramp, graded({ gain: triple(1.3) }), { ...EBU_R103_V3, area: 0 })
  const levels = ramp.map((pixel) => gradeColour(pixel, grade)[1])
  expect(Math.max(...levels)).toBeGreaterThan(1.045)
  const steps = levels.slice(1).map((level, i) => level - (levels[i] as number))
  expect(Math.min(...steps)).toBeGreaterThan(0.25 / 4000)
})

it.each([
  { name: 'blown out', before: graded({ gain: triple(3) }) },
  { name: 'all above peak', before: graded({ lift: triple(0.99), gain: triple(3) }) },
  { name: 'nearly all below black', before: graded({ lift: triple(-1), gain: triple(0.1) }) },
])('brings a picture that is $name inside as a picture', ({ before }) => {
  const pixels = fewPixels('desk').filter((_, i) => i % 4 === 0)
  const { grade } = brought(pixels, before, STRICT)
  expect(shareOf(pixels, STRICT)(grade)).toBe(0)
  expect(grade.saturation).toBeGreaterThanOrEqual(0.4)
  for (const c of [0, 1, 2] as const) {
    const levels = pixels.map((pixel) => gradeColour(pixel, { ...grade, saturation: 1 })[c])
    const [dark = 0, light = 0] = [0.05, 0.95].map(
      (part) => levels.toSorted((a, b) => a - b)[Math.floor(part * levels.length)],
    )
    expect(light - dark).toBeGreaterThan(0.2)
  }
})

describe('refuses', () => {
  const pixels = fewPixels('desk')
  const house = (limits: Partial<ToleranceProfile>): ToleranceProfile => ({
    ...STRICT,
    name: 'House',
    ...limits,
  })

  it('limits that only a flat picture would keep', () => {
    const problem = refused(pixels, IDENTITY_GRADE, house({ luma: [0.48, 0.52] }))
    expect(problem?.code).toBe('out-of-range')
    expect(problem?.says).toMatch(/of the cue is outside “House”, which allows 0\.00 %/)
    expect(problem?.says).toMatch(/contrast|no grade/)
  })

  it('limits that leave no level inside', () => {
    const problem = refused(pixels, IDENTITY_GRADE, house({ rgb: [0, 0.4], luma: [0.5, 1] }))
    expect(problem?.code).toBe('conflict')
    expect(problem?.says).toMatch(/highest lower limit is 50\.00 %, the lowest upper limit 40/)
  })

  it('a cue without colours, and numbers that are not finite', () => {
    const empty = bringInside({
      colours: { colours: new Float64Array(0), weights: new Float64Array(0) },
      grade: IDENTITY_GRADE,
      matrix: 'bt709',
      profile: STRICT,
      shareOutside: () => 1,
    })
    expect(empty.ok ? undefined : empty.problems[0].code).toBe('missing')
    const endless = graded({ gain: triple(Number.POSITIVE_INFINITY) })
    expect(refused(pixels, endless, STRICT)?.code).toBe('out-of-range')
  })
})
