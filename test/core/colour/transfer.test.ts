import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bt709ToLinear, linearToBt709 } from '../../../src/core/colour/bt709Oetf.ts'
import { bt1886ToLinear, linearToBt1886 } from '../../../src/core/colour/bt1886.ts'
import { linearToSrgb, srgbToLinear } from '../../../src/core/colour/srgb.ts'
import vectors from '../../vectors/transfer.json' with { type: 'json' }

const FUNCTIONS: Readonly<Record<string, (x: number, white: number, black: number) => number>> = {
  linearToBt709,
  bt1886ToLinear,
  srgbToLinear,
  linearToSrgb,
}

const INVERSES: Readonly<Record<string, (x: number, white: number, black: number) => number>> = {
  linearToBt709: bt709ToLinear,
  bt1886ToLinear: linearToBt1886,
  srgbToLinear: linearToSrgb,
  linearToSrgb: srgbToLinear,
}

const within = (value: number | undefined, expected: number) =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(
    vectors.epsilon * Math.max(1, Math.abs(expected)),
  )

describe('transfer functions', () => {
  it.each(vectors.rows)('$function of $input is $output', (row) => {
    const { white = 1, black = 0 } = row
    const exact = FUNCTIONS[row.function]?.(row.input, white, black)
    within(exact, row.output)
    within(INVERSES[row.function]?.(exact ?? Number.NaN, white, black), row.input)
  })

  it.each([
    ['BT.709', linearToBt709, bt709ToLinear],
    ['sRGB', linearToSrgb, srgbToLinear],
  ])('of %s go there and back, and never fall', (_, encode, decode) => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.2, max: 1.5, noNaN: true }),
        fc.double({ min: -0.2, max: 1.5, noNaN: true }),
        (a, b) => {
          // The published three- and five-digit constants leave a gap of 1e-7 at the sRGB knee.
          expect(decode(encode(a))).toBeCloseTo(a, 6)
          if (a <= b) expect(encode(a)).toBeLessThanOrEqual(encode(b))
        },
      ),
      { seed: 1, numRuns: 2000 },
    )
  })

  it('BT.1886 puts black and white where the display has them, and nothing under the floor', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1.1, noNaN: true }),
        (white, black, signal) => {
          expect(bt1886ToLinear(0, white, black)).toBeCloseTo(black, 9)
          expect(bt1886ToLinear(1, white, black)).toBeCloseTo(white, 9)
          const back = linearToBt1886(bt1886ToLinear(signal, white, black), white, black)
          expect(back).toBeCloseTo(signal, 9)
        },
      ),
      { seed: 2, numRuns: 500 },
    )
    expect(bt1886ToLinear(-0.5, 100, 0.1)).toBe(0)
  })

  it('a signal of BT.709 on a BT.1886 display is darker than the scene: the system gamma', () => {
    for (const light of [0.05, 0.18, 0.5, 0.9])
      expect(bt1886ToLinear(linearToBt709(light), 1, 0)).toBeLessThan(light)
  })
})
