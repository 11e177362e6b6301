import { describe, expect, test } from 'vitest'
import { FLASH_CAUTION } from '../../../src/core/flashes/caution.ts'
import { flashesOfCue } from '../../../src/core/flashes/flashesOfCue.ts'
import { createFlashGatherer } from '../../../src/core/flashes/flashGatherer.ts'
import type { FlashReport } from '../../../src/core/flashes/flashReport.ts'
import { meanCells } from '../../../src/core/flashes/meanCells.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { seeded } from '../../kernel/randomPictures.ts'
import { type Formula, flashing, lightAfter, PAL, reportOf } from './flashClip.ts'

const SMALL = { width: 32, height: 18 }

const kinds = ({ breaches }: FlashReport) => breaches.map(({ kind }) => kind)

/** A picture of which the first `pixels`, row by row, flash between black and white at 12.5 Hz. */
const partFlashing = (pixels: number, width: number, height: number): FlashReport | undefined => {
  const gatherer = createFlashGatherer(width, height, PAL)
  for (let n = 0; n < 12; n++) {
    const plane = Float64Array.from({ length: width * height }, (_, i) =>
      i < pixels && n % 2 === 1 ? 1 : 0,
    )
    meanCells({ width, height, r: plane, g: plane, b: plane }, gatherer.cells)
    gatherer.add(frame(n))
  }
  return gatherer.report()
}

describe('area', () => {
  test('exactly a quarter passes, more fails', () => {
    const [width, height] = [200, 100]
    const quarter = (width * height) / 4
    expect(partFlashing(quarter, width, height)?.breaches).toEqual([])
    const over = partFlashing(quarter + 2, width, height)
    expect(over?.breaches).toMatchObject([{ kind: 'general', reading: 'both', changes: 11 }])
    expect(over?.breaches[0]?.area).toBeGreaterThan(0.25)
    expect(over?.breaches[0]?.area).toBeLessThan(0.2511)
  })
  test('the series tells of the part that changes, each way', () => {
    const report = partFlashing(10_000, 200, 100)
    expect([...(report?.series.up ?? [])].slice(0, 4)).toEqual([0, 0.5, 0, 0.5])
    expect([...(report?.series.down ?? [])].slice(0, 4)).toEqual([0, 0, 0.5, 0])
    expect([...(report?.series.changes ?? [])].slice(0, 4)).toEqual([0, 1, 2, 3])
  })
})

describe('time', () => {
  test('a gradual rise counts once, whenever it reaches the difference', () => {
    // Up over 5 frames and down over 5: two and a half flashes a second, and a change more.
    const rising: Formula = (n) => 0.1 + 0.16 * Math.min(n % 10, 10 - (n % 10))
    const report = reportOf(rising, 100, SMALL)
    expect(Math.max(...report.series.changes)).toBe(6)
    expect(report.breaches).toEqual([])
    // Over 3 frames each: 8 and a third.
    const faster: Formula = (n) => 0.1 + 0.27 * Math.min(n % 6, 6 - (n % 6))
    expect(kinds(reportOf(faster, 100, SMALL))).toEqual(['general'])
  })
  test('a breach has the frames of its changes, not of the second around them', () => {
    const changes = Array.from({ length: 14 }, (_, i) => 200 + 2 * i)
    const report = reportOf(lightAfter(changes), 300, SMALL)
    expect(report.breaches).toMatchObject([
      { first: 200, last: 226, changes: 13, area: 1, reading: 'both', isCautious: false },
    ])
  })
  test('two breaches that are apart are two', () => {
    const burst = (at: number) => Array.from({ length: 10 }, (_, i) => at + 2 * i)
    const report = reportOf(lightAfter([...burst(10), ...burst(110)]), 200, SMALL)
    expect(report.breaches).toMatchObject([
      { first: 10, last: 28 },
      { first: 110, last: 128 },
    ])
  })
  test('10 flashes in a second at 30 fail', () => {
    expect(kinds(reportOf(flashing(3), 60, { ...SMALL, at: rate(30) }))).toEqual(['general'])
  })
  test('what flashes within the limits for more than 5 s is a caution', () => {
    const slow = reportOf(flashing(10), 200, SMALL)
    expect(slow.breaches).toEqual([])
    expect(slow.long).toMatchObject([{ kind: 'general', last: 199, changes: 5 }])
    expect(reportOf(flashing(10), 130, SMALL).long).toEqual([])
    expect(reportOf(flashing(4), 200, SMALL).long).toEqual([])
    expect(reportOf(flashing(50), 400, SMALL).long).toEqual([])
  })
})

describe('cuts', () => {
  test('fast cuts whose light parts lie elsewhere each time fail as a whole picture', () => {
    const halves: Formula = (n, x) => {
      const shot = Math.floor(n / 3)
      return x < 0.5 === (shot % 2 === 0) ? 0.8 : 0.2
    }
    expect(reportOf(halves, 60, SMALL).breaches).toMatchObject([{ kind: 'general' }])
    // One third after another is lit: no place changes more than twice in three cuts.
    const thirds: Formula = (n, x) => (Math.floor(x * 3) === Math.floor(n / 3) % 3 ? 0.8 : 0.2)
    expect(reportOf(thirds, 60, SMALL).breaches).toMatchObject([{ reading: 'picture' }])
  })
  test('cuts a second apart pass', () => {
    expect(reportOf(flashing(50, 0.7, 0.2), 200, SMALL).breaches).toEqual([])
  })
})

describe('what does not count', () => {
  test.each<readonly [string, Formula]>([
    ['an edge that moves across', (n, x) => (x < n / 60 ? 0.8 : 0.1)],
    [
      'a small bright thing that runs to and fro',
      (n, x) => (Math.abs(x - Math.abs(((n / 20) % 2) - 1)) < 0.06 ? 0.9 : 0.1),
    ],
    ['the flicker of film, a few percent', (n) => 0.5 + 0.02 * ((n * 7) % 3)],
    ['flashes between lights above 160', (n) => (n % 2 === 0 ? 0.92 : 1.0)],
    ['flashes of 25 % of the area', (n, x) => (x < 0.25 && n % 2 === 0 ? 1 : 0)],
    ['a dark red that flickers', (n) => [0.1 + 0.02 * (n % 2), 0.02, 0.02]],
    ['a colour on the border of saturated red', (n) => [0.7, 0.34 + 0.01 * (n % 2), 0.34]],
  ])('%s', (_, formula) => {
    expect(reportOf(formula, 120, SMALL).breaches).toEqual([])
  })
  test('noise', () => {
    const random = seeded(5)
    expect(reportOf(() => 0.5 + 0.06 * (random() - 0.5), 60, SMALL).breaches).toEqual([])
  })
})

describe('red', () => {
  test('red and grey of the same luminance flash', () => {
    // 0.2126 of white's luminance: signal 0.4986 in sRGB.
    const report = reportOf((n) => (n % 4 < 2 ? [1, 0, 0] : [0.4986, 0.4986, 0.4986]), 60, SMALL)
    expect(kinds(report)).toContain('red')
    expect(Math.max(...report.series.redChanges)).toBe(13)
  })
  test('blue and green do not flash red', () => {
    expect(kinds(reportOf((n) => (n % 4 < 2 ? [0, 0, 1] : [0, 1, 0]), 60, SMALL))).not.toContain(
      'red',
    )
  })
})

describe('stripes', () => {
  const UNEVEN = [3, 15, 18, 32, 35, 38, 52, 54, 66, 70, 72, 88, 91, 103, 105, 120]
  const wave = (phase: number, light = 0.8) => (Math.sin(phase) > 0 ? light : 0.1)
  test.each<readonly [string, Formula]>([
    ['across', (_, x) => wave(2 * Math.PI * 10 * x)],
    ['down', (_, __, y) => wave(2 * Math.PI * 9 * y)],
    ['aslant', (_, x, y) => wave(2 * Math.PI * (9 * x + 7 * y))],
    ['aslant the other way', (_, x, y) => wave(2 * Math.PI * (9 * x - 7 * y))],
    ['at a flat slant', (_, x, y) => wave(2 * Math.PI * (3 * x + 9 * y))],
  ])('that keep still %s', (_, formula) => {
    expect(reportOf(formula, 10).breaches).toMatchObject([
      { kind: 'stripes', first: 0, last: 5, isStill: true },
    ])
  })
  test('on 30 % of the picture pass while they keep still, and fail when they move', () => {
    const part =
      (speed: number): Formula =>
      (n, x, y) =>
        y < 0.3 ? wave(2 * Math.PI * (10 * x + speed * n)) : 0.1
    expect(reportOf(part(0), 40).breaches).toEqual([])
    expect(reportOf(part(0.08), 40).breaches).toMatchObject([{ kind: 'stripes', isStill: false }])
  })
  test.each<readonly [string, Formula]>([
    ['five pairs', (_, x) => wave(2 * Math.PI * 5 * x + 0.01)],
    ['bars of little contrast', (_, x) => 0.5 + 0.03 * Math.sign(Math.sin(2 * Math.PI * 10 * x))],
    ['bars above 160', (_, x) => 0.96 + 0.04 * Math.sign(Math.sin(2 * Math.PI * 10 * x))],
    [
      'uneven bars',
      (_, x) => (UNEVEN.filter((edge) => edge <= 128 * x).length % 2 === 0 ? 0.8 : 0.1),
    ],
  ])('not %s', (_, formula) => {
    expect(reportOf(formula, 10).breaches).toEqual([])
  })
})

test('a cue has the breaches that reach into it and its own part of the series', () => {
  const changes = Array.from({ length: 14 }, (_, i) => 1020 + 2 * i)
  const report = reportOf((n) => lightAfter(changes)(n + 1000, 0, 0), 100, {
    ...SMALL,
    first: 1000,
  })
  const cue = flashesOfCue(report, frame(1040), frame(1060))
  expect(cue).toMatchObject({ first: 1040, frames: 20, breaches: report.breaches })
  expect(cue.caution).toBe(FLASH_CAUTION)
  expect([...cue.series.up]).toEqual([...report.series.up.slice(40, 60)])
  expect(flashesOfCue(report, frame(1047), frame(1060)).breaches).toEqual([])
  expect(flashesOfCue(report, frame(1000), frame(1020)).breaches).toEqual([])
})

test('frames that are not in order are a bug', () => {
  const gatherer = createFlashGatherer(4, 4, PAL)
  expect(gatherer.report()).toBeUndefined()
  gatherer.add(frame(7))
  expect(() => gatherer.add(frame(9))).toThrow(/one after another/u)
})
