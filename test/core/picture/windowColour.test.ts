import fc from 'fast-check'
import { expect, test } from 'vitest'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import type { Layout } from '../../../src/core/picture/planes.ts'
import { windowColour } from '../../../src/core/picture/windowColour.ts'
import { shadedPlanes } from '../../kernel/randomPictures.ts'
import { seeded } from '../../support/seeded.ts'

const CODING = { matrix: 'bt709', range: 'narrow' } as const
const [WIDTH, HEIGHT, SIZE] = [50, 34, 9]

/** The mean of the square's pixels of the whole decoded frame. */
const meanOf = (levels: Float64Array, x: number, y: number): number => {
  const [column, row] = [Math.floor(x * WIDTH), Math.floor(y * HEIGHT)]
  let sum = 0
  let count = 0
  for (let j = row - 4; j <= row + 4; j++)
    for (let i = column - 4; i <= column + 4; i++) {
      if (i < 0 || j < 0 || i >= WIDTH || j >= HEIGHT) continue
      sum += levels[j * WIDTH + i] ?? 0
      count++
    }
  return sum / count
}

test.each<Layout>(['420', '422', '444', 'rgb'])(
  'the mean of a square as the whole frame is decoded: %s',
  (layout) => {
    const planes = shadedPlanes(seeded(4), layout, 10, WIDTH, HEIGHT)
    const { r, g, b } = decodePlanes(planes, CODING)
    const part = fc.double({ min: 0, max: 0.999, noNaN: true })
    fc.assert(
      fc.property(part, part, (x, y) => {
        const colour = windowColour(planes, CODING, x, y, SIZE)
        for (const [c, levels] of [r, g, b].entries())
          expect(colour[c as 0 | 1 | 2]).toBeCloseTo(meanOf(levels, x, y), 10)
      }),
    )
  },
)

test('the far edge of the scan is its last pixel', () => {
  const planes = shadedPlanes(seeded(5), '420', 8, WIDTH, HEIGHT)
  const picture = decodePlanes(planes, CODING)
  expect(windowColour(planes, CODING, 1, 1, 1)[0]).toBeCloseTo(
    picture.r[WIDTH * HEIGHT - 1] ?? 9,
    10,
  )
})
