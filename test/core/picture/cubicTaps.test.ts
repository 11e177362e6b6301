import fc from 'fast-check'
import { expect, it } from 'vitest'
import { cubicTaps, filterWidths, tapReach } from '../../../src/core/picture/cubicTaps.ts'
import { framingMap, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { keysCubic } from '../../../src/core/picture/keysCubic.ts'

it('is the kernel of Keys (1981), eq. (15), whose numbers half way are −1/16 and 9/16', () => {
  expect([-2, -1, 0, 1, 2, 3].map(keysCubic)).toEqual([0, 0, 1, 0, 0, 0])
  expect([-1.5, -0.5, 0.5, 1.5].map(keysCubic)).toEqual([-1 / 16, 9 / 16, 9 / 16, -1 / 16])
  for (const x of [0.999999, 1.999999]) expect(Math.abs(keysCubic(x))).toBeLessThan(1e-6)
})

it('weights add up to 1 at any place and width, those below 0 to 0.14 at most, and none lies further off than it is wide', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -0.5, max: 2000, noNaN: true }),
      fc.double({ min: 1, max: 32, noNaN: true }),
      (place, width) => {
        const weights = new Float64Array(2 * tapReach(width))
        const first = cubicTaps(place, width, weights)
        expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
        const below = weights.reduce((sum, weight) => sum + Math.max(0, -weight), 0)
        expect(below).toBeLessThan(0.14)
        const past = [first - 1, first + weights.length].map((k) => Math.abs(k - place) / width)
        expect(Math.min(...past)).toBeGreaterThanOrEqual(2)
      },
    ),
    { seed: 5, numRuns: 500 },
  )
})

it('errs with the third power of how fine the detail is, as Keys shows', () => {
  const errorAt = (turns: number) => {
    const weights = new Float64Array(4)
    let most = 0
    for (let place = 10; place < 30; place += 0.01) {
      const first = cubicTaps(place, 1, weights)
      const read = weights.reduce((sum, w, k) => sum + w * Math.sin(turns * (first + k)), 0)
      most = Math.max(most, Math.abs(read - Math.sin(turns * place)))
    }
    return most
  }
  expect(errorAt(0.2) / errorAt(0.1)).toBeGreaterThan(7.5)
})

it('is as wide as delivered pixels are apart on the scan, along its columns and rows', () => {
  const widths = (change: object, aspect = 1) =>
    filterWidths(framingMap({ ...IDENTITY_FRAMING, ...change }, 100, 80, aspect))
  expect(widths({ zoom: 3 })).toEqual({ across: 1, down: 1 })
  expect(widths({ zoom: 0.5, squeeze: 2 })).toEqual({ across: 1, down: 2 })
  expect(widths({ zoom: 0.25, squeeze: 0.25 })).toEqual({ across: 16, down: 4 })
  const turned = widths({ zoom: 0.5, rotation: 30 })
  expect(turned.across).toBeCloseTo(2, 12)
  expect(turned.down).toBeCloseTo(2, 12)
  const quarter = widths({ squeeze: 0.5, rotation: 90 })
  expect(quarter.across).toBeCloseTo(1, 12)
  expect(quarter.down).toBeCloseTo(2, 12)
})
