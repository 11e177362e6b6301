import { describe, expect, it } from 'vitest'
import { rgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { pictureLevels } from '../../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { r103Filter } from '../../../src/core/tolerance/r103Filter.ts'
import { createVerdictGatherer } from '../../../src/core/tolerance/verdict.ts'

const plane = (width: number, height: number, at: (x: number, y: number) => number) =>
  Float64Array.from({ length: width * height }, (_, i) => at(i % width, Math.floor(i / width)))

const grey = (width: number, height: number, at: (x: number, y: number) => number) => {
  const picture = rgbPicture(width, height)
  for (const channel of [picture.r, picture.g, picture.b]) channel.set(plane(width, height, at))
  return picture
}

describe('the filter of EBU R 103 v3 (facts levels.md §1)', () => {
  it('spreads an impulse by .25 .1875 .125 .0625 along a line, and by 1/4 1/2 1/4 down', () => {
    const out = r103Filter(
      plane(21, 5, (x) => (x === 10 ? 1 : 0)),
      21,
      5,
    )
    const row = [...out.slice(2 * 21 + 6, 2 * 21 + 15)]
    expect(row).toEqual([0, 0.0625, 0.125, 0.1875, 0.25, 0.1875, 0.125, 0.0625, 0])
    const point = r103Filter(
      plane(21, 5, (x, y) => (x === 10 && y === 2 ? 1 : 0)),
      21,
      5,
    )
    expect([0, 1, 2, 3, 4].map((y) => point[y * 21 + 10])).toEqual([0, 0.0625, 0.125, 0.0625, 0])
  })

  it('turns a step into 0 .0625 .1875 .375 .625 .8125 .9375 1', () => {
    const out = r103Filter(
      plane(20, 3, (x) => (x >= 10 ? 1 : 0)),
      20,
      3,
    )
    expect([...out.slice(20 + 6, 20 + 14)]).toEqual([
      0, 0.0625, 0.1875, 0.375, 0.625, 0.8125, 0.9375, 1,
    ])
  })

  it('leaves a flat picture as it is, to its edges', () => {
    const out = r103Filter(
      plane(9, 9, () => 0.7),
      9,
      9,
    )
    for (const value of out) expect(value).toBeCloseTo(0.7, 14)
  })
})

describe('the tolerance of EBU R 103 v3', () => {
  it('has the preferred range of the table: 20…984 of 10-bit codes', () => {
    expect(EBU_R103_V3.rgb.map((level) => Math.round(64 + 876 * level))).toEqual([20, 984])
    expect(EBU_R103_V3.luma.map((level) => Math.round(64 + 876 * level))).toEqual([20, 984])
  })

  const verdictOf = (rows: number) => {
    const gatherer = createVerdictGatherer(EBU_R103_V3)
    const picture = grey(40, 400, (_, y) => (y < rows ? 1.2 : 0.5))
    gatherer.add(frame(7), pictureLevels(picture, 'bt709', EBU_R103_V3))
    return gatherer.verdict()
  }

  it('allows one part in a hundred of the area, and no more', () => {
    // The filter blurs the edge row to 1.025, inside: of n lit rows n − 1… stay outside.
    const inside = verdictOf(5)
    expect(inside?.areaOutside).toBeLessThanOrEqual(0.01)
    expect(inside?.isInside).toBe(true)
    const outside = verdictOf(6)
    expect(outside?.areaOutside).toBeGreaterThan(0.01)
    expect(outside?.isInside).toBe(false)
  })

  it('measures the area after the filter: a line one pixel wide goes under it', () => {
    const gatherer = createVerdictGatherer(EBU_R103_V3)
    const lines = grey(100, 50, (x) => (x % 25 === 0 ? 1.15 : 0.5))
    gatherer.add(frame(0), pictureLevels(lines, 'bt709', EBU_R103_V3))
    expect(gatherer.verdict()).toMatchObject({ isInside: true, areaOutside: 0 })
    const unfiltered = pictureLevels(lines, 'bt709', { ...EBU_R103_V3, filtered: false })
    expect(unfiltered.outside).toBe(4 * 50)
  })

  it('finds R′G′B′ out of range where Y′ is not, and tells below from above', () => {
    const picture = rgbPicture(20, 20)
    picture.r.fill(1.1)
    picture.g.fill(0.5)
    picture.b.fill(-0.1)
    const levels = pictureLevels(picture, 'bt709', EBU_R103_V3)
    expect(levels).toMatchObject({ below: 400, above: 400, outside: 400, pixels: 400 })
    expect(levels.y.high).toBeLessThan(EBU_R103_V3.luma[1])
  })

  it('keeps the worst frame, and does not mind in which order frames come', () => {
    const frames = [3, 9, 4].map((lit, n) => ({
      n,
      levels: pictureLevels(
        grey(40, 100, (_, y) => (y < lit ? 1.3 : 0.5)),
        'bt709',
        EBU_R103_V3,
      ),
    }))
    const gather = (order: readonly number[]) => {
      const gatherer = createVerdictGatherer(EBU_R103_V3)
      for (const i of order) {
        const each = frames[i]
        if (each) gatherer.add(frame(each.n), each.levels)
      }
      return gatherer.verdict()
    }
    expect(gather([0, 1, 2])?.worstFrame).toBe(1)
    expect(gather([2, 1, 0])).toEqual(gather([0, 1, 2]))
    expect(gather([0, 1, 2])).toMatchObject({ frames: 3, framesOutside: 3 })
  })
})
