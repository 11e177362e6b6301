import fc from 'fast-check'
import { expect, test } from 'vitest'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import { everySecondPair, secondPairCoding } from '../../../src/core/picture/everySecondPair.ts'
import { planesOf } from '../../kernel/randomPictures.ts'

const LAYOUTS = ['420', '422', '444', 'rgb'] as const

/** A picture whose codes say the line they are on. */
const numbered = (layout: (typeof LAYOUTS)[number], width: number, height: number, depth = 10) =>
  planesOf(layout, depth, width, height, (plane, _, y) => plane * 100 + y)

test('lines 0 and 1 of four are kept, and of 4:2:0 the chroma line between them', () => {
  const kept = everySecondPair(numbered('420', 2, 10))
  expect(kept.height).toBe(6)
  expect([...kept.samples[0]]).toEqual([0, 1, 4, 5, 8, 9].flatMap((y) => [y, y]))
  expect([...kept.samples[1]]).toEqual([100, 102, 104])
  expect([...everySecondPair(numbered('422', 2, 6)).samples[2]]).toEqual([200, 201, 204, 205])
})

test('what is kept is a whole picture of any size, layout and depth', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...LAYOUTS),
      fc.constantFrom(8, 10),
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 40 }),
      (layout, depth, width, height) => {
        const whole = numbered(layout, width, height, depth)
        const kept = everySecondPair(whole)
        const lines = Array.from({ length: height }, (_, y) => y).filter((y) => y % 4 < 2)
        expect(kept.height).toBe(lines.length)
        expect([...kept.samples[0]]).toEqual(
          lines.flatMap((y) => Array.from({ length: width }, () => whole.samples[0][y * width])),
        )
        const decoded = decodePlanes(kept, { matrix: 'bt709', range: 'narrow' })
        expect(decoded.r).toHaveLength(width * lines.length)
      },
    ),
  )
})

test('it is read as a picture of the same shape', () => {
  const whole = numbered('444', 16, 12)
  const kept = everySecondPair(whole)
  const { pixelAspect = 0 } = secondPairCoding(
    { matrix: 'bt601', range: 'narrow', pixelAspect: 1.2 },
    whole,
    kept,
  )
  expect((kept.width / kept.height) * pixelAspect).toBeCloseTo((16 / 12) * 1.2, 12)
})
