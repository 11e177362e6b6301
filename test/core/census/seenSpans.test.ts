import { expect, test } from 'vitest'
import { seenSpans } from '../../../src/core/census/seenSpans.ts'
import { filterWidths, tapReach } from '../../../src/core/picture/cubicTaps.ts'
import { type Framing, framingMap, IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { randomFraming, seeded } from '../../kernel/randomPictures.ts'

const WIDTH = 61
const HEIGHT = 37

/** Every scanned pixel that some delivered one is read from, by asking each. */
const touched = (framing: Framing, pixelAspect: number): Set<number> => {
  const map = framingMap(framing, WIDTH, HEIGHT, pixelAspect)
  const widths = filterWidths(map)
  const seen = new Set<number>()
  for (let y = map.open.top; y < map.open.bottom; y++)
    for (let x = map.open.left; x < map.open.right; x++) {
      const sx = map.xx * x + map.xy * y + map.offsetX
      const sy = map.yx * x + map.yy * y + map.offsetY
      if (sx < -0.5 || sx > WIDTH - 0.5 || sy < -0.5 || sy > HEIGHT - 0.5) continue
      const [reachX, reachY] = [tapReach(widths.across), tapReach(widths.down)]
      for (let row = Math.floor(sy) - reachY + 1; row <= Math.floor(sy) + reachY; row++)
        for (let column = Math.floor(sx) - reachX + 1; column <= Math.floor(sx) + reachX; column++)
          if (row >= 0 && row < HEIGHT && column >= 0 && column < WIDTH)
            seen.add(row * WIDTH + column)
    }
  return seen
}

test('a picture at rest is seen whole', () => {
  for (const span of seenSpans(IDENTITY_FRAMING, WIDTH, HEIGHT))
    expect(span).toEqual({ first: 0, end: WIDTH })
})

test('of a picture that is only blanked nothing is seen but what is not', () => {
  const spans = seenSpans({ ...IDENTITY_FRAMING, blanking: 0.5 }, WIDTH, HEIGHT)
  const { open } = framingMap({ ...IDENTITY_FRAMING, blanking: 0.5 }, WIDTH, HEIGHT)
  for (const [row, span] of spans.entries())
    expect(span.end - span.first).toBe(row >= open.top && row < open.bottom ? WIDTH : 0)
})

test('every pixel that is read is in a span, and spans hold few others', () => {
  const random = seeded(11)
  for (let i = 0; i < 200; i++) {
    const framing = { ...randomFraming(random), zoom: 0.4 + 2.6 * random() }
    const pixelAspect = 0.8 + 0.7 * random()
    const seen = touched(framing, pixelAspect)
    const spans = seenSpans(framing, WIDTH, HEIGHT, pixelAspect)
    let inSpans = 0
    for (const [row, { first, end }] of spans.entries()) {
      inSpans += end - first
      for (let x = 0; x < WIDTH; x++)
        if (seen.has(row * WIDTH + x) && (x < first || x >= end))
          throw new Error(`${JSON.stringify(framing)}: ${x}, ${row} is not in ${first}…${end}`)
    }
    // Between the pixels of two delivered ones there may be some that neither is read from.
    expect(inSpans).toBeLessThanOrEqual(seen.size + 4 * HEIGHT + 8)
  }
})
