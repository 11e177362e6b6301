import { describe, expect, it } from 'vitest'
import { rgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { compositePeaks } from '../../../src/core/tolerance/compositePeaks.ts'
import { profileById, profileByName } from '../../../src/core/tolerance/findProfile.ts'
import { pictureLevels } from '../../../src/core/tolerance/pictureLevels.ts'
import {
  EBU_R103_V3,
  PUBLISHED_PROFILES,
  type ToleranceProfile,
} from '../../../src/core/tolerance/profile.ts'
import { createVerdictGatherer } from '../../../src/core/tolerance/verdict.ts'
import composite from '../../vectors/compositePeaks.json' with { type: 'json' }
import tolerances from '../../vectors/tolerances.json' with { type: 'json' }

type Rgb = readonly [number, number, number]

const published = (id: string): ToleranceProfile => {
  const profile = profileById(id, [])
  if (!profile) throw new Error(`There is no ${id}.`)
  return profile
}

/** A picture of one colour, 10 by 10. */
const flat = ([r, g, b]: Rgb) => {
  const picture = rgbPicture(10, 10)
  picture.r.fill(r)
  picture.g.fill(g)
  picture.b.fill(b)
  return picture
}

const isInside = (colour: Rgb, profile: ToleranceProfile): boolean => {
  const gatherer = createVerdictGatherer(profile)
  gatherer.add(frame(0), pictureLevels(flat(colour), 'bt709', profile))
  return gatherer.verdict()?.isInside ?? false
}

const grey = (level: number): Rgb => [level, level, level]
const scaled = (rgb: readonly number[], amplitude: number): Rgb =>
  rgb.map((c) => c * amplitude) as unknown as Rgb

describe('composite peaks of colour bars', () => {
  const asMv = (level: number) => level * 700
  const asIre = (level: number) => 7.5 + 92.5 * level

  it.each(composite.bars)('$name peaks as the table says, in mV and in IRE', (bar) => {
    for (const [amplitude, mv, ire] of [
      [0.75, bar.mv75, bar.ire75],
      [1, bar.mv100, bar.ire100],
    ] as const)
      for (const [end, peak] of compositePeaks(...scaled(bar.rgb, amplitude)).entries()) {
        expect(Math.abs(asMv(peak) - (mv[end] ?? 0))).toBeLessThanOrEqual(composite.epsilon)
        expect(Math.abs(asIre(peak) - (ire[end] ?? 0))).toBeLessThanOrEqual(composite.epsilon)
      }
  })

  it('100 % bars just pass a 625-line system, and 75 % bars alone a 525-line one', () => {
    for (const { rgb } of composite.bars) {
      expect(isInside(scaled(rgb, 1), published('composite-625'))).toBe(true)
      expect(isInside(scaled(rgb, 0.75), published('composite-525'))).toBe(true)
    }
    const [yellow = grey(0), , , , , blue = grey(0)] = composite.bars.map(({ rgb }) => rgb)
    expect(isInside(scaled(yellow, 1.001), published('composite-625'))).toBe(false)
    expect(isInside(scaled(blue, 1.001), published('composite-625'))).toBe(false)
    expect(isInside(scaled(yellow, 1), published('composite-525'))).toBe(false)
  })
})

describe('the published profiles', () => {
  it.each(tolerances.profiles)('$id has the limits of the vectors', (wanted) => {
    const profile = published(wanted.id)
    const near = (limits: readonly [number, number] | null, stated: number[] | undefined) => {
      expect(limits === null).toBe(stated === undefined)
      for (const [end, level] of (limits ?? []).entries())
        expect(Math.abs(level * 100 - (stated?.[end] ?? 0))).toBeLessThan(tolerances.epsilon)
    }
    near(profile.rgb, wanted.rgbPercent)
    near(profile.luma, wanted.lumaPercent)
    near(profile.composite, wanted.compositePercent)
    expect(profile.area).toBe(wanted.area)
    expect(profile.filtered).toBe(wanted.filtered)
    expect(profile.source).not.toBe('')
  })

  it('R 103 v1.1 holds luma closer than R′G′B′', () => {
    const profile = published('ebu-r103-v1-1')
    expect(isInside([1.05, 1, 1], profile)).toBe(true)
    expect(isInside([1.051, 1, 1], profile)).toBe(false)
    expect(isInside(grey(1.03), profile)).toBe(true)
    expect(isInside(grey(1.031), profile)).toBe(false)
    expect(isInside(grey(-0.01), profile)).toBe(true)
    expect(isInside(grey(-0.011), profile)).toBe(false)
  })

  it('the strict narrow range takes black and peak, and not one pixel past them', () => {
    const profile = published('narrow-range')
    expect(isInside(grey(0), profile)).toBe(true)
    expect(isInside(grey(1), profile)).toBe(true)
    const picture = flat(grey(1))
    picture.g[37] = 1 + 0.01 / 876
    expect(pictureLevels(picture, 'bt709', profile)).toMatchObject({ above: 1, outside: 1 })
    const gatherer = createVerdictGatherer(profile)
    gatherer.add(frame(0), pictureLevels(picture, 'bt709', profile))
    expect(gatherer.verdict()).toMatchObject({ isInside: false, areaOutside: 0.01 })
  })

  it('have ids and names that are all told apart, however they are spaced', () => {
    for (const profile of PUBLISHED_PROFILES) {
      expect(profileByName(profile.id, [])).toBe(profile)
      expect(profileByName(profile.name.toUpperCase().replaceAll(' ', '_'), [])).toBe(profile)
    }
    expect(profileByName('EBU R103 v1.1', [])?.id).toBe('ebu-r103-v1-1')
  })
})

describe('composite peaks in a verdict', () => {
  const profile: ToleranceProfile = { ...EBU_R103_V3, composite: [-0.2, 1.2] }

  it('count a pixel that nothing else puts outside, and say on which side', () => {
    const yellow = pictureLevels(flat([1, 1, 0]), 'bt709', profile)
    expect(yellow).toMatchObject({ below: 0, above: 100, outside: 100 })
    const blue = pictureLevels(flat([0, 0, 1]), 'bt709', profile)
    expect(blue).toMatchObject({ below: 100, above: 0, outside: 100 })
    expect(pictureLevels(flat([1, 1, 0]), 'bt709', EBU_R103_V3)).toMatchObject({ outside: 0 })
  })

  it('are gathered over frames, and are not told where a profile does not limit them', () => {
    const gatherer = createVerdictGatherer(profile)
    for (const [n, colour] of [[1, 1, 0] as const, [0, 0, 1] as const].entries())
      gatherer.add(frame(n), pictureLevels(flat(colour), 'bt709', profile))
    const { composite: peaks } = gatherer.verdict() ?? {}
    expect(peaks?.high).toBeCloseTo(compositePeaks(1, 1, 0)[1], 12)
    expect(peaks?.low).toBeCloseTo(compositePeaks(0, 0, 1)[0], 12)
    const plain = createVerdictGatherer(EBU_R103_V3)
    plain.add(frame(0), pictureLevels(flat([1, 1, 0]), 'bt709', EBU_R103_V3))
    expect(plain.verdict()).not.toHaveProperty('composite')
  })

  it('are those of the filtered picture where the profile filters', () => {
    const picture = flat(grey(0.5))
    picture.r[55] = 1.5
    const filtered = pictureLevels(picture, 'bt709', profile).composite
    const unfiltered = pictureLevels(picture, 'bt709', { ...profile, filtered: false }).composite
    expect(filtered?.high).toBeCloseTo(compositePeaks(0.5 + 8 / 64, 0.5, 0.5)[1], 12)
    expect(unfiltered?.high).toBeCloseTo(compositePeaks(1.5, 0.5, 0.5)[1], 12)
  })
})
