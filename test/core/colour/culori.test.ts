import { converter } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { linearToBt709 } from '../../../src/core/colour/bt709Oetf.ts'
import { displayedRgbToLab } from '../../../src/core/colour/cieLab.ts'
import { LUMA_WEIGHTS } from '../../../src/core/colour/lumaWeights.ts'
import { linearToSrgb, srgbToLinear } from '../../../src/core/colour/srgb.ts'

const toLrgb = converter('lrgb')
const toRgb = converter('rgb')
const toXyz65 = converter('xyz65')
const toRec2020 = converter('rec2020')
const toLab65 = converter('lab65')

const level = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('single colours as culori converts them', () => {
  it('sRGB signal ↔ linear light', () => {
    fc.assert(
      fc.property(level(0, 1.5), (value) => {
        const grey = { r: value, g: value, b: value }
        expect(srgbToLinear(value)).toBeCloseTo(toLrgb({ mode: 'rgb', ...grey }).r, 12)
        expect(linearToSrgb(value)).toBeCloseTo(toRgb({ mode: 'lrgb', ...grey }).r, 12)
      }),
      { seed: 41, numRuns: 2000 },
    )
  })

  it('light → signal of BT.709, which has 1.099 and 0.018 where culori has more digits', () => {
    fc.assert(
      fc.property(level(0, 1), (light) => {
        // A grey of rec2020 is a grey of XYZ: only its transfer function is at work.
        const white = toXyz65({ mode: 'lrgb', r: light, g: light, b: light })
        const { r } = toRec2020({ ...white })
        expect(Math.abs(linearToBt709(light) - r)).toBeLessThan(3e-4)
      }),
      { seed: 42, numRuns: 2000 },
    )
  })

  it('luma weights are the luminances of the primaries', () => {
    for (const [c, name] of (['r', 'g', 'b'] as const).entries()) {
      const primary = { r: 0, g: 0, b: 0, [name]: 1 }
      const of709 = toXyz65({ mode: 'lrgb', ...primary })
      const of2020 = toXyz65({ mode: 'rec2020', ...primary })
      expect(Math.abs(of709.y - (LUMA_WEIGHTS.bt709[c] as number))).toBeLessThan(5.1e-5)
      expect(Math.abs(of2020.y - (LUMA_WEIGHTS.bt2020[c] as number))).toBeLessThan(5.1e-5)
    }
  })

  it('displayed R′G′B′ → L*a*b*, D65: light by gamma 2.4, then as culori has it', () => {
    fc.assert(
      fc.property(level(0, 1), level(0, 1), level(0, 1), (r, g, b) => {
        const ours = displayedRgbToLab([r, g, b])
        const light = { mode: 'lrgb', r: r ** 2.4, g: g ** 2.4, b: b ** 2.4 } as const
        const theirs = toLab65(light)
        for (const [i, value] of [theirs.l, theirs.a, theirs.b].entries())
          expect(Math.abs((ours[i] as number) - value)).toBeLessThan(0.02)
      }),
      { seed: 43, numRuns: 2000 },
    )
  })
})
