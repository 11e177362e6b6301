import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { reelwright } from './reelwright.ts'

const WIDTH = 320
const HEIGHT = 200
let here = ''
let chart = ''

/**
 * A made-up chart of 16 bits: an even patch left above, a leaning edge right above, fine lines
 * left below, a streak behind white right below, and a dark mark near each corner.
 */
const levelAt = (x: number, y: number): number => {
  const mark = [
    [10, 10],
    [310, 11],
    [309, 190],
    [9, 189],
  ].some(([mx = 0, my = 0]) => Math.abs(x - mx) <= 2 && Math.abs(y - my) <= 2)
  if (mark) return 0
  if (y < 100) {
    if (x < 160) return 0.95
    // A leaning step over one pixel and a half: a box blur along the row.
    return 0.2 + 0.6 * Math.min(1, Math.max(0, (x - 240 - 0.1 * (y - 50)) / 1.5 + 0.5))
  }
  if (x < 160) return 0.5 + 0.2 * Math.sin(2 * Math.PI * 0.2 * x)
  return x < 190 ? 0.9 : 0.1 + 0.8 * 0.06 * Math.exp(-(x - 189.5) / 12)
}

beforeAll(() => {
  here = mkdtempSync(join(tmpdir(), 'reelwright-chart-'))
  chart = join(here, 'chart.png')
  const data = new Uint16Array(3 * WIDTH * HEIGHT)
  for (let i = 0; i < WIDTH * HEIGHT; i++)
    data.fill(Math.round(65_535 * levelAt(i % WIDTH, Math.floor(i / WIDTH))), 3 * i, 3 * i + 3)
  writeFileSync(chart, encode({ width: WIDTH, height: HEIGHT, data, channels: 3, depth: 16 }))
})
afterAll(() => rmSync(here, { recursive: true, force: true }))

const measured = async (...args: readonly string[]): Promise<Record<string, number>> => {
  const { status, out, error } = await reelwright(['chart', chart, ...args, '--json'])
  if (status !== 0) throw new Error(error)
  const rows: readonly { what: string; value: number }[] = JSON.parse(out).measured
  return Object.fromEntries(rows.map(({ what, value }) => [what, value]))
}

test('levels, an edge, fine lines and geometry of a picture', async () => {
  const levels = await measured('levels', '20,20,100,60')
  expect(levels.Green).toBeCloseTo(665, 1)
  expect(levels['Red less green']).toBe(0)
  const edge = await measured('edge', '200,20,80,60')
  // The box blur is 1.5 pixels along the row and cos(atan 0.1) of that across the edge.
  const wide = 1.5 * Math.cos(Math.atan(0.1)) * Math.PI * 0.25
  expect(edge['Response at 0.25 cycles a pixel']).toBeCloseTo((100 * Math.sin(wide)) / wide, -0.5)
  expect(edge['The edge leans by']).toBeCloseTo((180 / Math.PI) * Math.atan(0.1), 1)
  const lines = await measured('lines', '20,110,120,60')
  expect(lines['Lines at']).toBeCloseTo(0.2, 3)
  expect(lines['Peak to peak']).toBeCloseTo(280, 0)
  const corners = ['1,1,20,20', '300,2,20,20', '298,178,22,22', '1,180,20,20']
  const shape = await measured('geometry', ...corners)
  expect(shape.Width).toBeCloseTo(300, 1)
  expect(shape.Rotation).toBeCloseTo(0.26, 1)
})

test('the streak of a picture, and of a profile with the correctors of a machine', async () => {
  const streak = await measured('streak', '165,110,150,60')
  expect(streak['Green, time constant 1']).toBeCloseTo(12, 0)
  expect(streak['Green, its part of the step']).toBeCloseTo(6, 0)
  const path = join(here, 'line.csv')
  const rows = Array.from({ length: 300 }, (_, i) => {
    const at = i / 10
    return `${at},${at < 2 ? 660 : 30 + 630 * 0.05 * Math.exp(-(at - 1.95) / 3)}`
  })
  writeFileSync(path, `µs,mV\n${rows.join('\n')}\n`)
  const { status, out } = await reelwright(['chart', path, 'streak', '--correctors', '1,3,9'])
  expect(status).toBe(0)
  expect(out).toMatch(/Level, time constant 1: 3\.00\d µs/u)
  expect(out).toMatch(/corrector of 3 µs to act by: 4\.9\d %/u)
})

test.each([
  [['levels'], 2, 'one region'],
  [['levels', '1,2,3'], 2, 'one region'],
  [['geometry', '1,1,20,20'], 2, '4 regions'],
  [['colour', '1,1,20,20'], 2, 'levels, edge'],
  [['levels', '300,1,50,50'], 3, 'not on the picture'],
  [['edge', '20,20,60,60'], 3, 'no edge'],
  [['levels', '1,1,20,20', '--frame', '9'], 3, 'frames 0 to 0'],
])('%j is refused', async (args, status, says) => {
  const refused = await reelwright(['chart', chart, ...args])
  expect([refused.status, refused.error]).toEqual([status, expect.stringContaining(says)])
})
