import { at } from '../base/assert.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import type { Triple } from '../colour/triple.ts'
import { baseColour, PRINT_BASE } from '../film/filmBase.ts'
import { decodePlanes } from '../picture/decodePlanes.ts'
import type { Framing } from '../picture/framing.ts'
import type { Coding, Planes } from '../picture/planes.ts'
import { orderByNearness } from './orderByNearness.ts'
import { seenSpans } from './seenSpans.ts'
import type { WeightedColours } from './weightedColours.ts'

/** Pixels that stand for a frame. */
const PIXELS = 8192

/**
 * Some pixels of one frame, evenly spread over what its framing shows of the scan: R′G′B′ before the
 * grade, each of weight 1, near colours side by side. They stand for a cue whose colours were not
 * counted, or for a held frame.
 */
export const frameColours = (planes: Planes, coding: Coding, framing: Framing): WeightedColours => {
  const { width, height } = planes
  const spans = seenSpans(framing, width, height, coding.pixelAspect)
  const seen = spans.reduce((sum, { first, end }) => sum + Math.max(0, end - first), 0)
  const stride = Math.max(1, seen / PIXELS)
  const base = coding.base ?? PRINT_BASE
  const picture = decodePlanes(planes, { ...coding, base: PRINT_BASE })
  const found: number[] = []
  let passed = 0
  let next = stride / 2
  for (const [row, { first, end }] of spans.entries()) {
    const length = Math.max(0, end - first)
    for (; next < passed + length; next += stride) {
      const place = row * width + first + Math.floor(next - passed)
      const scanned: Triple = [at(picture.r, place), at(picture.g, place), at(picture.b, place)]
      found.push(...baseColour(scanned, base))
    }
    passed += length
  }
  const order = orderByNearness(Float32Array.from(found))
  const colours = new Float64Array(found.length)
  for (const [to, from] of order.entries())
    for (let c = 0; c < 3; c++) colours[to * 3 + c] = at(found, from * 3 + c)
  return { colours, weights: new Float64Array(order.length).fill(1) }
}

/** Colours as they are delivered under a grade. */
export const gradedColours = (
  { colours, weights }: WeightedColours,
  grade: Grade,
): WeightedColours => {
  const graded = new Float64Array(colours.length)
  for (let i = 0; i < colours.length; i += 3)
    graded.set(gradeColour([at(colours, i), at(colours, i + 1), at(colours, i + 2)], grade), i)
  return { colours: graded, weights }
}
