import { describe, expect, it } from 'vitest'
import { baseColour, type FilmBase, PRINT_BASE } from '../../src/core/film/filmBase.ts'
import { decodePlanes } from '../../src/core/picture/decodePlanes.ts'
import type { Coding, Planes } from '../../src/core/picture/planes.ts'
import { makeStill } from '../../src/work/makeStill.ts'
import { MADE_LISTS } from '../support/madeLists.ts'

/** Four flat quarters, so that every small pixel's mean is one colour. */
const quarters: Planes = (() => {
  const colours = [
    [300, 400, 600],
    [500, 512, 512],
    [700, 560, 470],
    [120, 512, 530],
  ]
  const plane = (p: number) =>
    Uint16Array.from({ length: 64 }, (_, i) => {
      const quarter = ((i % 8) >> 2) + 2 * (i >> 5)
      return colours[quarter]?.[p] ?? 0
    })
  return {
    width: 8,
    height: 8,
    layout: '444',
    depth: 10,
    samples: [plane(0), plane(1), plane(2)],
  }
})()

const BASES: readonly FilmBase[] = [
  PRINT_BASE,
  { ...PRINT_BASE, scan: 'printing-density' },
  { ...PRINT_BASE, scan: 'negative', clear: [0.1, 0.2, 0.3], gamma: [0.55, 0.6, 0.65] },
  {
    ...PRINT_BASE,
    dyes: [
      [1.4, -0.1, 0],
      [0, 1.1, 0],
      [0, 0.1, 1.2],
    ],
  },
  { ...PRINT_BASE, list: MADE_LISTS['a matrix, a curve and a cube'] ?? null },
]

describe('a still', () => {
  it.each(BASES)('is the frame after the base, as 10-bit codes: $scan', (base) => {
    const coding: Coding = { matrix: 'bt709', range: 'narrow', base }
    const { rgb } = makeStill(quarters, coding, 2, 2)
    const { r, g, b } = decodePlanes(quarters, coding)
    for (const [i, at] of [0, 4, 32, 36].entries())
      for (const [c, plane] of [r, g, b].entries()) {
        const code = Math.min(1023, Math.max(0, 64 + 876 * (plane[at] ?? 0)))
        expect(Math.abs((rgb[i * 3 + c] ?? 0) - code)).toBeLessThanOrEqual(0.5)
      }
  })

  it('is of the scan’s mean, which the base makes video of', () => {
    const base: FilmBase = { ...PRINT_BASE, scan: 'printing-density' }
    const samples = [0, 1, 2].map(() => Uint16Array.of(200, 600)) as unknown as Planes['samples']
    const pair: Planes = { width: 2, height: 1, layout: 'rgb', depth: 10, samples }
    const { rgb } = makeStill(pair, { matrix: 'bt709', range: 'full', base }, 1, 1)
    const [level] = baseColour([400 / 1023, 400 / 1023, 400 / 1023], base)
    expect(rgb[0]).toBe(Math.round(64 + 876 * level))
  })
})
