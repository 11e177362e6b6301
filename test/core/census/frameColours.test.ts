import { expect, test } from 'vitest'
import { frameColours, gradedColours } from '../../../src/core/census/frameColours.ts'
import { gradeColour, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Planes } from '../../../src/core/picture/planes.ts'
import { shadedPlanes } from '../../kernel/randomPictures.ts'
import { MADE_LISTS } from '../../support/madeLists.ts'
import { seeded } from '../../support/seeded.ts'

const CODING = { matrix: 'bt709', range: 'narrow' } as const

/** Left half of one level, right half of another. */
const halves = (left: number, right: number): Planes => {
  const luma = new Uint8Array(64 * 32)
  for (let i = 0; i < luma.length; i++) luma[i] = i % 64 < 32 ? left : right
  const grey = new Uint8Array(64 * 32).fill(128)
  return { width: 64, height: 32, layout: '444', depth: 8, samples: [luma, grey, grey] }
}

test('a small frame gives every pixel, as it is decoded by its base', () => {
  const planes = shadedPlanes(seeded(1), '420', 8, 30, 20)
  const coding = {
    ...CODING,
    base: {
      ...PRINT_BASE,
      dyes: [
        [1.1, 0, 0],
        [0, 1, 0],
        [0, 0.1, 1],
      ],
      list: MADE_LISTS['a matrix, a curve and a cube'] ?? null,
    },
  } as const
  const { colours, weights } = frameColours(planes, coding, IDENTITY_FRAMING)
  const picture = decodePlanes(planes, coding)
  const sorted = (numbers: Iterable<number>) => [...numbers].sort((a, b) => a - b)
  expect(weights).toEqual(new Float64Array(600).fill(1))
  const reds = [...colours].filter((_, i) => i % 3 === 0)
  expect(sorted(reds)).toEqual(sorted(picture.r))
})

test('a large frame gives about 8192 pixels, evenly', () => {
  const planes = shadedPlanes(seeded(2), '422', 10, 400, 300)
  const { colours, weights } = frameColours(planes, CODING, IDENTITY_FRAMING)
  expect(weights.length).toBeGreaterThan(8000)
  expect(weights.length).toBeLessThan(8400)
  const mean = (levels: Iterable<number>) => {
    const all = [...levels]
    return all.reduce((a, b) => a + b, 0) / all.length
  }
  const greens = [...colours].filter((_, i) => i % 3 === 1)
  expect(mean(greens)).toBeCloseTo(mean(decodePlanes(planes, CODING).g), 1)
})

test('only what the framing shows of the scan counts', () => {
  const framing = { ...IDENTITY_FRAMING, zoom: 4, pan: 1 }
  const whole = frameColours(halves(40, 200), CODING, IDENTITY_FRAMING)
  const part = frameColours(halves(40, 200), CODING, framing)
  const kinds = ({ colours }: typeof whole) => new Set([...colours].map((x) => x.toFixed(6)))
  expect(kinds(whole).size).toBe(2)
  expect(kinds(part).size).toBe(1)
})

test('colours as delivered are graded one by one, weights kept', () => {
  const grade = { ...IDENTITY_GRADE, gain: [1.2, 1, 0.9], saturation: 0.5 } as const
  const from = {
    colours: Float64Array.of(0.1, 0.2, 0.3, 0.9, 0.5, 0.4),
    weights: Float64Array.of(3, 5),
  }
  const { colours, weights } = gradedColours(from, grade)
  expect([...colours]).toEqual([
    ...gradeColour([0.1, 0.2, 0.3], grade),
    ...gradeColour([0.9, 0.5, 0.4], grade),
  ])
  expect(weights).toEqual(from.weights)
})
