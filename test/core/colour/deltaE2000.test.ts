import { converter, differenceCiede2000 } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { displayedRgbToLab, type Lab } from '../../../src/core/colour/cieLab.ts'
import { deltaE2000 } from '../../../src/core/colour/deltaE2000.ts'
import vectors from '../../vectors/ciede2000.json' with { type: 'json' }

const culoriDifference = differenceCiede2000()
const culoriLab65 = converter('lab65')
const asCulori = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b })

const anyLab = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -110, max: 110, noNaN: true }),
  fc.double({ min: -110, max: 110, noNaN: true }),
)

describe('CIEDE2000', () => {
  it.each(vectors.rows)('of published pair $pair is $deltaE', ({ lab1, lab2, deltaE }) => {
    const [first, second] = [lab1 as unknown as Lab, lab2 as unknown as Lab]
    expect(Math.abs(deltaE2000(first, second) - deltaE)).toBeLessThanOrEqual(vectors.epsilon)
    expect(Math.abs(deltaE2000(second, first) - deltaE)).toBeLessThanOrEqual(vectors.epsilon)
  })

  it('is what an independent library computes, for any two colours', () => {
    fc.assert(
      fc.property(anyLab, anyLab, (lab1, lab2) => {
        const expected = culoriDifference(asCulori(lab1), asCulori(lab2))
        expect(Math.abs(deltaE2000(lab1, lab2) - expected)).toBeLessThan(1e-9)
      }),
      { seed: 3, numRuns: 5000 },
    )
  })

  it('of a colour to itself is 0', () => {
    fc.assert(
      fc.property(anyLab, (lab) => {
        expect(deltaE2000(lab, lab)).toBeCloseTo(0, 12)
      }),
      { seed: 4 },
    )
  })
})

describe('the colour a display shows', () => {
  it('is white, black and neutral where R′, G′ and B′ are alike', () => {
    expect(displayedRgbToLab([1, 1, 1])[0]).toBeCloseTo(100, 9)
    expect(displayedRgbToLab([0, 0, 0])[0]).toBeCloseTo(0, 9)
    for (const level of [0, 0.02, 0.3, 0.7, 1]) {
      const [, a, b] = displayedRgbToLab([level, level, level])
      expect(Math.hypot(a, b)).toBeLessThan(1e-9)
    }
  })

  it('is that of the nearer end where the signal is outside 0…1', () => {
    expect(displayedRgbToLab([1.2, -0.1, 0.5])).toEqual(displayedRgbToLab([1, 0, 0.5]))
  })

  it('is what an independent library finds for the light that BT.1886 makes of it', () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(unit, unit, unit, (r, g, b) => {
        const lrgb = { mode: 'lrgb' as const, r: r ** 2.4, g: g ** 2.4, b: b ** 2.4 }
        const expected = culoriLab65(lrgb)
        const [l, a, bb] = displayedRgbToLab([r, g, b])
        // culori's matrices have seven decimals.
        expect(Math.abs(l - expected.l)).toBeLessThan(1e-3)
        expect(Math.abs(a - expected.a)).toBeLessThan(2e-3)
        expect(Math.abs(bb - expected.b)).toBeLessThan(2e-3)
      }),
      { seed: 5, numRuns: 2000 },
    )
  })
})
