import { describe, expect, it } from 'vitest'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import type { MatrixName } from '../../../src/core/picture/planes.ts'
import { rgbPicture } from '../../../src/core/picture/rgbPicture.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { profileById, profileByName } from '../../../src/core/tolerance/findProfile.ts'
import { pictureLevels } from '../../../src/core/tolerance/pictureLevels.ts'
import { EBU_R103_V3 } from '../../../src/core/tolerance/profile.ts'
import { r103Filter } from '../../../src/core/tolerance/r103Filter.ts'
import { createVerdictGatherer } from '../../../src/core/tolerance/verdict.ts'
import vectors from '../../vectors/r103.json' with { type: 'json' }

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
    expect(row).toEqual(vectors.filter.impulse)
    const point = r103Filter(
      plane(21, 5, (x, y) => (x === 10 && y === 2 ? 1 : 0)),
      21,
      5,
    )
    expect([0, 1, 2, 3, 4].map((y) => point[y * 21 + 10])).toEqual([0, 0.0625, 0.125, 0.0625, 0])
  })

  it('is the published kernel of three rows of seven, in sixty-fourths', () => {
    const point = r103Filter(
      plane(9, 5, (x, y) => (x === 4 && y === 2 ? 64 : 0)),
      9,
      5,
    )
    const rows = [1, 2, 3].map((y) => [...point.slice(y * 9 + 1, y * 9 + 8)])
    expect(rows).toEqual(vectors.filter.kernelTimes64)
  })

  it('turns a step into 0 .0625 .1875 .375 .625 .8125 .9375 1', () => {
    const out = r103Filter(
      plane(20, 3, (x) => (x >= 10 ? 1 : 0)),
      20,
      3,
    )
    expect([...out.slice(20 + 6, 20 + 14)]).toEqual(vectors.filter.step)
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
  const flat = (depth: number, code: number, matrix: MatrixName) => {
    const of = (value: number) =>
      depth > 8 ? new Uint16Array(64).fill(value) : new Uint8Array(64).fill(value)
    const zero = 128 * 2 ** (depth - 8)
    const samples = [of(code), of(zero), of(zero)] as const
    const planes = { width: 8, height: 8, layout: '444', depth, samples } as const
    const picture = decodePlanes(planes, { matrix, range: 'narrow' })
    return pictureLevels(picture, matrix, EBU_R103_V3)
  }

  it.each(vectors.limits)(
    'takes $low to $high of $depth bits and no code more, by any luma equation',
    ({ depth, low, high }) => {
      for (const matrix of ['bt601', 'bt709', 'bt2020'] as const) {
        expect(flat(depth, low, matrix).outside).toBe(0)
        expect(flat(depth, high, matrix).outside).toBe(0)
        expect(flat(depth, low - 1, matrix)).toMatchObject({ below: 64, above: 0 })
        expect(flat(depth, high + 1, matrix)).toMatchObject({ below: 0, above: 64 })
      }
    },
  )

  it('is −35 to 735 mV', () => {
    const { low, high, epsilon } = vectors.limitsMv
    for (const limits of [EBU_R103_V3.rgb ?? [0, 0], EBU_R103_V3.luma]) {
      expect(Math.abs(limits[0] * 700 - low)).toBeLessThan(epsilon)
      expect(Math.abs(limits[1] * 700 - high)).toBeLessThan(epsilon)
    }
  })

  it('takes exactly one part in a hundred outside, and not a pixel more', () => {
    const some = { low: -0.2, high: 0.9 }
    const judged = (outside: number) => {
      const gatherer = createVerdictGatherer(EBU_R103_V3)
      gatherer.add(frame(0), {
        r: some,
        g: some,
        b: some,
        y: some,
        below: outside,
        above: 0,
        outside,
        pixels: 414_720,
      })
      return gatherer.verdict()
    }
    expect(EBU_R103_V3.area).toBe(vectors.area.part)
    expect(judged(4147)).toMatchObject({ isInside: true, framesOutside: 0 })
    expect(judged(4148)).toMatchObject({ isInside: false, framesOutside: 1 })
  })

  it('is one part in a hundred where that is a whole number of pixels', () => {
    for (const pixels of [100, 5700, 230_400]) {
      const picture = rgbPicture(100, pixels / 100)
      for (const plane of [picture.r, picture.g, picture.b]) plane.fill(0.5)
      for (let i = 0; i < pixels / 100; i++) picture.r[i] = 1.2
      const levels = pictureLevels(picture, 'bt709', { ...EBU_R103_V3, filtered: false })
      const gatherer = createVerdictGatherer(EBU_R103_V3)
      gatherer.add(frame(0), levels)
      expect(gatherer.verdict()).toMatchObject({ isInside: true, areaOutside: 0.01 })
    }
  })

  it('knows nothing before a frame was added', () => {
    expect(createVerdictGatherer(EBU_R103_V3).verdict()).toBeUndefined()
  })

  it.each(['ebu-r103-v3', 'EBU R 103 v3', 'EBU R103 v3', 'ebu r103v3'])(
    'is found as %s',
    (name) => {
      expect(profileByName(name, [])).toBe(EBU_R103_V3)
    },
  )

  it('is not found as anything else', () => {
    expect(profileByName('R 103', [])).toBeUndefined()
    expect(profileById('EBU R 103 v3', [])).toBeUndefined()
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
