import { describe, expect, it } from 'vitest'
import { chartGeometry, markIn } from '../../../src/core/chart/chartMarks.ts'
import { fineLines } from '../../../src/core/chart/fineLines.ts'
import { patchLevels } from '../../../src/core/chart/patchLevels.ts'
import {
  checkRegion,
  columnMeans,
  type RegionValues,
  turned,
} from '../../../src/core/chart/region.ts'

const regionOf = (
  width: number,
  height: number,
  at: (x: number, y: number) => number,
): RegionValues => ({
  width,
  height,
  values: Float64Array.from({ length: width * height }, (_, i) =>
    at(i % width, Math.floor(i / width)),
  ),
})

it('reads the levels of an open gate in mV, with balance and shading', () => {
  const plane = (level: number, shade = 0) =>
    Float64Array.from({ length: 90 * 60 }, (_, i) => level + shade * ((i % 90) / 89 - 0.5))
  const picture = {
    ...{ width: 90, height: 60, r: plane(0.94), g: plane(0.95, 0.03), b: plane(0.96) },
  }
  // 95 % of 700 mV is 665 mV (common practice: open gate on green).
  const found = patchLevels(picture as never, { x: 0, y: 0, width: 90, height: 60 })
  expect(found.mean[1]).toBeCloseTo(665, 6)
  expect(found.redLessGreen).toBeCloseTo(-7, 6)
  expect(found.blueLessGreen).toBeCloseTo(7, 6)
  // Thirds of a ramp over the width: their means lie two thirds of it apart.
  expect(found.shading).toBeCloseTo((700 * 0.03 * 60) / 89, 6)
})

it('finds a mark to a tenth of a pixel, dark or light, and says where there is none', () => {
  const cross = (x0: number, y0: number, ground: number, mark: number) =>
    regionOf(41, 31, (x, y) => {
      /** How much of a pixel lies within `reach` of a line. */
      const covers = (a: number, b: number, reach: number) =>
        Math.max(0, Math.min(1, reach + 0.5 - Math.abs(a - b)))
      const arm = Math.max(
        covers(x, x0, 1.5) * covers(y, y0, 8),
        covers(y, y0, 1.5) * covers(x, x0, 8),
      )
      return ground + (mark - ground) * arm
    })
  for (const [ground, mark] of [
    [0.9, 0.1],
    [0.1, 0.9],
  ] as const) {
    const found = markIn(cross(20.3, 14.6, ground, mark))
    expect(found.ok && Math.abs(found.value.x - 20.3)).toBeLessThan(0.1)
    expect(found.ok && Math.abs(found.value.y - 14.6)).toBeLessThan(0.1)
  }
  expect(markIn(regionOf(20, 20, () => 0.5)).ok).toBe(false)
})

describe('geometry by four marks', () => {
  const rotate = (degrees: number, width: number, height: number, lean = 0) => {
    const angle = (Math.PI / 180) * degrees
    return [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ].map(([u = 0, v = 0]) => {
      const [x, y] = [(u * width) / 2 + (v * lean) / 2, (v * height) / 2]
      return {
        x: 500 + x * Math.cos(angle) - y * Math.sin(angle),
        y: 400 + x * Math.sin(angle) + y * Math.cos(angle),
      }
    }) as unknown as Parameters<typeof chartGeometry>[0]
  }

  it('tells size, middle and rotation', () => {
    const found = chartGeometry(rotate(1.5, 800, 600))
    expect(found.width).toBeCloseTo(800, 9)
    expect(found.height).toBeCloseTo(600, 9)
    expect(found.rotation).toBeCloseTo(1.5, 9)
    expect(found.skew).toBeCloseTo(0, 9)
    expect([found.middle.x, found.middle.y]).toEqual([
      expect.closeTo(500, 9),
      expect.closeTo(400, 9),
    ])
  })

  it('tells keystone and skew apart', () => {
    const keystone = chartGeometry([
      { x: 90, y: 100 },
      { x: 910, y: 100 },
      { x: 900, y: 700 },
      { x: 100, y: 700 },
    ])
    expect(keystone.keystone).toBeCloseTo(20 / 810, 9)
    expect(keystone.rotation).toBeCloseTo(0, 9)
    const skewed = chartGeometry(rotate(0, 800, 600, 10))
    expect(skewed.skew).toBeCloseTo(-(180 / Math.PI) * Math.atan(10 / 600), 6)
  })
})

describe('fine lines', () => {
  const lines = (frequency: number, amplitude: number) =>
    regionOf(200, 40, (x) => 0.5 + (amplitude / 2) * Math.sin(2 * Math.PI * frequency * x + 1))

  it.each([
    [0.123, 0.4],
    [0.31, 0.05],
    [0.25, 0.9],
  ])('of %f cycles a pixel and %f peak to peak', (frequency, amplitude) => {
    const found = fineLines(lines(frequency, amplitude))
    expect(found.ok && found.value.frequency).toBeCloseTo(frequency, 3)
    expect(found.ok && found.value.amplitude / amplitude).toBeCloseTo(1, 2)
    const level = fineLines(turned(lines(frequency, amplitude)))
    expect(level.ok && [level.value.areLevel, level.value.frequency]).toEqual([
      true,
      expect.closeTo(frequency, 3),
    ])
  })

  it('are told as a part of lines from black to peak white', () => {
    const square = regionOf(240, 10, (x) => Number(Math.floor(x / 12) % 2 === 0))
    const found = fineLines(square)
    expect(found.ok && found.value.frequency).toBeCloseTo(1 / 24, 3)
    // Twelve samples a half: the first harmonic is a little above 4/π.
    expect(found.ok && Math.abs(found.value.part - 1)).toBeLessThan(0.01)
  })

  it('are not found where there are none', () => {
    expect(fineLines(regionOf(100, 20, () => 0.4)).ok).toBe(false)
  })
})

it('refuses a region off the picture, or too small', () => {
  const picture = { width: 100, height: 50 }
  const region = (x: number, y: number, width: number, height: number) => ({ x, y, width, height })
  expect(checkRegion(picture, region(0, 0, 100, 50)).ok).toBe(true)
  expect(checkRegion(picture, region(1, 0, 100, 50)).ok).toBe(false)
  expect(checkRegion(picture, region(0, 0, 2.5, 50)).ok).toBe(false)
  expect(checkRegion(picture, region(0, 0, 5, 50), 8).ok).toBe(false)
})

it('takes the mean of columns', () => {
  expect([...columnMeans(regionOf(3, 4, (x, y) => x + y))]).toEqual([1.5, 2.5, 3.5])
})
