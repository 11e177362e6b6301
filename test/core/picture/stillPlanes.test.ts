import { expect, it } from 'vitest'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import { stillPlanes } from '../../../src/core/picture/stillPlanes.ts'

it('a still is read as the signal that its codes stand for', () => {
  const rgb = Uint16Array.from([64, 502, 940, 1023, 0, 283])
  const still = { width: 2, height: 1, rgb }
  const planes = stillPlanes(still)
  expect(stillPlanes(still)).toBe(planes)
  const { r, g, b } = decodePlanes(planes, { matrix: 'bt709', range: 'narrow' })
  expect([r[0], g[0], b[0]]).toEqual([0, 0.5, 1])
  expect(r[1]).toBeCloseTo(959 / 876, 12)
  expect(g[1]).toBeCloseTo(-64 / 876, 12)
  expect(b[1]).toBeCloseTo(0.25, 12)
})
