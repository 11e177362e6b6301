import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CdlStyle, gradeToCdl } from '../../../src/core/colour/cdl.ts'
import { type Grade, gradeChannel, gradeColour, saturate } from '../../../src/core/colour/grade.ts'
import { invertCdl } from '../../../src/core/colour/invertCdl.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const triple = (min: number, max: number): fc.Arbitrary<Triple> =>
  fc.tuple(number(min, max), number(min, max), number(min, max))
const channel = fc.constantFrom(0, 1, 2)

const anyLift = number(-0.4, 0.4)
const anyGamma = number(0.2, 5)
const anyGain = number(0.5, 2)
const anyLevel = number(-0.5, 1.5)

const anyGrade: fc.Arbitrary<Grade> = fc.record({
  lift: triple(-0.4, 0.4),
  gamma: triple(0.2, 5),
  gain: triple(0.5, 2),
  saturation: number(0, 3),
})

const withChannel = (colour: Triple, at: number, value: number): Triple =>
  colour.map((old, c) => (c === at ? value : old)) as unknown as Triple

/** What float64 may round off in a sum of a few products of this size. */
const rounding = (...values: readonly number[]) => 1e-15 * Math.max(1, ...values.map(Math.abs))

describe('a grade', () => {
  it('never falls as the level rises; with gain below lift, never rises', () => {
    fc.assert(
      fc.property(anyLevel, anyLevel, anyLift, anyGamma, anyGain, (x1, x2, lift, gamma, gain) => {
        const [low, high] = [Math.min(x1, x2), Math.max(x1, x2)]
        const rise = (from: number, to: number) =>
          gradeChannel(high, from, gamma, to) - gradeChannel(low, from, gamma, to)
        const slack = rounding(gradeChannel(high, lift, gamma, gain))
        expect(rise(lift, gain)).toBeGreaterThanOrEqual(-slack)
        expect(rise(gain, lift)).toBeLessThanOrEqual(rounding(gradeChannel(low, gain, gamma, lift)))
      }),
      { seed: 11, numRuns: 5000 },
    )
  })

  it('with any saturation, never lowers a channel whose level rises', () => {
    fc.assert(
      fc.property(anyGrade, triple(-0.5, 1.5), channel, number(0, 1), (grade, colour, c, more) => {
        const before = gradeColour(colour, grade)
        const after = gradeColour(withChannel(colour, c, (colour[c] as number) + more), grade)
        const slack = 10 * rounding(...before, ...after)
        expect((after[c] as number) - (before[c] as number)).toBeGreaterThanOrEqual(-slack)
      }),
      { seed: 12, numRuns: 3000 },
    )
  })

  it('reaches only the channel it is set for, but for saturation', () => {
    fc.assert(
      fc.property(anyGrade, triple(-0.5, 1.5), channel, number(0.1, 0.3), (grade, rgb, c, more) => {
        for (const stage of ['lift', 'gamma', 'gain'] as const) {
          const moved = withChannel(grade[stage], c, (grade[stage][c] as number) + more)
          const plain = { ...grade, saturation: 1 }
          const before = gradeColour(rgb, plain)
          const after = gradeColour(rgb, { ...plain, [stage]: moved })
          for (const other of [0, 1, 2].filter((each) => each !== c))
            expect(Math.abs((after[other] as number) - (before[other] as number))).toBeLessThan(
              4 * rounding(...before, ...after),
            )
        }
      }),
      { seed: 13, numRuns: 1000 },
    )
  })
})

describe('lift, gain and gamma', () => {
  it('lift moves black by all of its change, white by none, and between in proportion', () => {
    fc.assert(
      fc.property(anyLevel, anyLift, anyLift, anyGain, (x, lift, change, gain) => {
        const moved = (at: number) =>
          gradeChannel(at, lift + change, 1, gain) - gradeChannel(at, lift, 1, gain)
        expect(moved(0)).toBeCloseTo(change, 14)
        expect(moved(1)).toBeCloseTo(0, 14)
        expect(moved(x)).toBeCloseTo(change * (1 - x), 14)
      }),
      { seed: 14, numRuns: 2000 },
    )
  })

  it('gain moves white by all of its change, black by none, and between in proportion', () => {
    fc.assert(
      fc.property(anyLevel, anyLift, anyLift, anyGain, (x, lift, change, gain) => {
        const moved = (at: number) =>
          gradeChannel(at, lift, 1, gain + change) - gradeChannel(at, lift, 1, gain)
        expect(moved(1)).toBeCloseTo(change, 14)
        expect(moved(0)).toBe(0)
        expect(moved(x)).toBeCloseTo(change * x, 14)
      }),
      { seed: 15, numRuns: 2000 },
    )
  })

  it('at any gamma, lift leaves white and gain leaves black', () => {
    fc.assert(
      fc.property(anyLift, anyLift, anyGamma, anyGain, (lift, other, gamma, gain) => {
        const white = gradeChannel(1, lift, gamma, gain)
        expect(Math.abs(gradeChannel(1, other, gamma, gain) / white - 1)).toBeLessThan(1e-14)
        expect(gradeChannel(0, lift, gamma, gain + 0.5)).toBe(gradeChannel(0, lift, gamma, gain))
      }),
      { seed: 16, numRuns: 2000 },
    )
  })

  it('gamma leaves black and white, and brightens between them above 1', () => {
    fc.assert(
      fc.property(number(0.001, 0.999), anyGamma, number(1.001, 2), (x, gamma, times) => {
        expect(gradeChannel(0, 0, gamma, 1)).toBe(0)
        expect(gradeChannel(1, 0, gamma, 1)).toBe(1)
        expect(gradeChannel(x, 0, gamma * times, 1)).toBeGreaterThan(gradeChannel(x, 0, gamma, 1))
      }),
      { seed: 17, numRuns: 2000 },
    )
  })

  it('saturation leaves greys and the luma of every colour', () => {
    fc.assert(
      fc.property(triple(-0.5, 1.5), number(0, 3), ([r, g, b], saturation) => {
        const luma = ([x, y, z]: Triple) => 0.2126 * x + 0.7152 * y + 0.0722 * z
        expect(luma(saturate([r, g, b], saturation))).toBeCloseTo(luma([r, g, b]), 13)
        for (const value of saturate([r, r, r], saturation)) expect(value).toBeCloseTo(r, 13)
      }),
      { seed: 18, numRuns: 2000 },
    )
  })
})

describe('the inverse of a grade', () => {
  const plainGrade = fc.record({
    lift: triple(-0.4, 0.4),
    gamma: triple(0.5, 3),
    gain: triple(0.5, 2),
    saturation: number(0.2, 3),
  })
  // Near black a power below 1 magnifies what float64 rounds off: √1e-15, over the least slope.
  const near = (colour: Triple, wanted: Triple) => {
    for (const c of [0, 1, 2] as const)
      expect(Math.abs(colour[c] - wanted[c])).toBeLessThan(2e-6 * Math.max(1, Math.abs(wanted[c])))
  }
  const back = (colour: Triple, grade: Grade, style: CdlStyle) =>
    invertCdl(colour, gradeToCdl(grade), style)

  it('gives back every colour where nothing is clamped', () => {
    fc.assert(
      fc.property(plainGrade, triple(-0.5, 1.5), (grade, colour) =>
        near(back(gradeColour(colour, grade), grade, 'noclamp'), colour),
      ),
      { seed: 19, numRuns: 3000 },
    )
  })

  it('with clamps, gives back every colour that none of them touched', () => {
    const isInside = (colour: Triple) => colour.every((value) => value >= 0 && value <= 1)
    let tried = 0
    fc.assert(
      fc.property(plainGrade, triple(0, 1), (grade, colour) => {
        const unsaturated = gradeColour(colour, { ...grade, saturation: 1 })
        const graded = gradeColour(colour, grade)
        if (!isInside(unsaturated) || !isInside(graded)) return
        tried++
        near(back(graded, grade, 'clamp'), colour)
      }),
      { seed: 20, numRuns: 20_000 },
    )
    expect(tried).toBeGreaterThan(1000)
  })
})
