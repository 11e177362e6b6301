import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { feetPerMinute, metresOf, parseFilmLength } from '../../../src/core/film/filmLength.ts'
import { speedChange } from '../../../src/core/film/filmSpeed.ts'
import { pulldownLetter, pulledFrame, videoFramesOf } from '../../../src/core/film/pulldown.ts'
import { PITCHES, shrinkage, shrinkageAdvice } from '../../../src/core/film/shrinkage.ts'
import { soundOffset } from '../../../src/core/film/soundOffset.ts'
import { formatFootage, type Gauge } from '../../../src/core/time/footage.ts'
import { parseRate } from '../../../src/core/time/parseRate.ts'
import { rate, secondsAt } from '../../../src/core/time/rate.ts'

const R16 = rate(16)
const R24 = rate(24)
const R25 = rate(25)
const NTSC_FILM = rate(24000, 1001)

// facts/film.md §1: feet a minute = 60·fps over frames a foot (encyclopaedic page "film foot", F1).
describe('feet a minute', () => {
  it.each<[Gauge, number, number, number]>([
    ['35mm-4perf', 60, 90, 93.75],
    ['35mm-3perf', 45, 67.5, 70.3125],
    ['35mm-2perf', 30, 45, 46.875],
    ['16mm', 24, 36, 37.5],
    ['9.5mm', 24, 36, 37.5],
    ['super8', 13.333, 20, 20.833],
    ['standard8', 12, 18, 18.75],
  ])('of %s at 16, 24 and 25', (gauge, at16, at24, at25) => {
    expect(feetPerMinute(gauge, R16)).toBeCloseTo(at16, 3)
    expect(feetPerMinute(gauge, R24)).toBeCloseTo(at24, 3)
    expect(feetPerMinute(gauge, R25)).toBeCloseTo(at25, 3)
  })
})

// facts/film.md §2, computed: length in feet, frames, and running time to a second.
describe('running time', () => {
  it.each<[Gauge, string, number, number, number, number]>([
    ['35mm-4perf', '400 ft', 6400, 6 * 60 + 40, 4 * 60 + 27, 4 * 60 + 16],
    ['35mm-4perf', '2000 ft', 32_000, 2000, 22 * 60 + 13, 21 * 60 + 20],
    ['16mm', '100 ft', 4000, 250, 167, 160],
    ['16mm', '1000 ft', 40_000, 2500, 27 * 60 + 47, 26 * 60 + 40],
    ['super8', '50 ft', 3600, 225, 150, 144],
    ['standard8', '400 ft', 32_000, 2000, 22 * 60 + 13, 21 * 60 + 20],
  ])('of %s, %s', (gauge, length, frames, at16, at24, at25) => {
    const parsed = parseFilmLength(length, gauge, R24)
    expect(parsed).toEqual({ ok: true, value: frames })
    for (const [speed, seconds] of [
      [R16, at16],
      [R24, at24],
      [R25, at25],
    ] as const)
      expect(Math.round(secondsAt(frames, speed))).toBe(seconds)
  })

  it('is read back: a length as feet, frames, metres and time is one length', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2_000_000 }),
        fc.constantFrom<Gauge>('35mm-4perf', '35mm-3perf', '16mm', 'super8', 'standard8'),
        (frames, gauge) => {
          const read = (text: string) => parseFilmLength(text, gauge, R24)
          expect(read(formatFootage(frames, gauge))).toEqual({ ok: true, value: frames })
          expect(read(`${frames} fr`)).toEqual({ ok: true, value: frames })
          expect(read(`${metresOf(frames, gauge).toFixed(6)} m`)).toEqual({
            ok: true,
            value: frames,
          })
          const seconds = frames / 24
          const clock = `${Math.floor(seconds / 60)}:${(seconds % 60).toFixed(4)}`
          expect(read(clock)).toEqual({ ok: true, value: frames })
        },
      ),
      { seed: 6, numRuns: 200 },
    )
  })

  it.each(['', 'ft', '-4 ft', '12 miles', '1:2:3:4', '9999999999 fr'])(
    '“%s” is no length',
    (text) => {
      expect(parseFilmLength(text, '16mm', R24).ok).toBe(false)
    },
  )
})

// facts/film.md §4, computed: cents = 1200·log2 of the ratio.
describe('speed and pitch', () => {
  it.each([
    ['24 at 25', R24, R25, 1.0416667, 70.672, -4],
    ['25 at 24', R25, R24, 0.96, -70.672, 4.1667],
    ['23.976 at 24', NTSC_FILM, R24, 1.001, 1.73, -0.0999],
    ['23.976 at 25', NTSC_FILM, R25, 1.0427083, 72.403, -4.0959],
    ['18 at 24', rate(18), R24, 1.33333333, 498.045, -25],
    ['18 at 25', rate(18), R25, 1.388889, 568.717, -28],
    ['16⅔ at 25', rate(50, 3), R25, 1.5, 701.955, -33.3333],
    ['16 at 25', R16, R25, 1.5625, 772.627, -36],
  ])('%s', (_, from, to, ratio, cents, percent) => {
    const change = speedChange(from, to)
    expect(change.ratio).toBeCloseTo(ratio, 6)
    expect(change.cents).toBeCloseTo(cents, 3)
    expect(100 * (change.length - 1)).toBeCloseTo(percent, 3)
  })

  it.each([
    ['24', 24, 1],
    ['16 2/3', 50, 3],
    ['16⅔', 50, 3],
    ['24000/1001', 24000, 1001],
    ['23.976', 24000, 1001],
  ])('the speed “%s” is read', (text, num, den) => {
    expect(parseRate(text)).toEqual({ ok: true, value: { num, den } })
  })

  it.each(['', '0', '-24', '24/0', 'fast', '1e3', '5000'])('“%s” is no speed', (text) => {
    expect(parseRate(text).ok).toBe(false)
  })
})

// facts/film.md §3; what is from memory says so.
describe('where sound lies', () => {
  it.each([
    ['16mm', 'optical', 26, 1.0833, 1.04, 'verified'],
    ['super8', 'magnetic', 18, 0.75, 0.72, 'secondary'],
    ['standard8', 'magnetic', 56, 2.3333, 2.24, 'secondary'],
    ['35mm-4perf', 'optical', 21, 0.875, 0.84, 'from memory'],
    ['35mm-4perf', 'magnetic', -28, -1.1667, -1.12, 'from memory'],
    ['16mm', 'separate', 0, 0, 0, 'from memory'],
  ] as const)('%s, %s', (gauge, track, frames, at24, at25, standing) => {
    const offset = soundOffset(gauge, track)
    expect(offset).toMatchObject({ frames, standing })
    expect(secondsAt(frames, R24)).toBeCloseTo(at24, 4)
    expect(secondsAt(frames, R25)).toBeCloseTo(at25, 4)
  })

  it('is not made up where it is not known', () => {
    expect(soundOffset('9.5mm', 'optical')).toBeUndefined()
  })
})

// facts/film.md §7, computed.
describe('shrinkage', () => {
  it.each([
    ['35mm-4perf', 471.2, 0.8],
    ['35mm-4perf', 470.25, 1],
    ['35mm-4perf', 467.875, 1.5],
    ['35mm-4perf', 465.5, 2],
    ['16mm', 754.38, 1],
    ['16mm', 762, 0],
  ] as const)('%s: 100 pitches of %f mm', (gauge, mm, percent) => {
    const [first] = PITCHES[gauge] ?? []
    expect(100 * shrinkage(mm, 100, first?.mm ?? 0)).toBeCloseTo(percent, 6)
  })

  it('reads 0.21 % where a short pitch is taken for a long one', () => {
    const [long, short] = PITCHES['35mm-4perf'] ?? []
    expect(100 * shrinkage(100 * (short?.mm ?? 0), 100, long?.mm ?? 1)).toBeCloseTo(0.21, 2)
  })

  it('says what it means, more careful with each step', () => {
    expect([0.001, 0.009, 0.015, 0.03].map((part) => shrinkageAdvice(part).slice(0, 12))).toEqual([
      'Below 0.8 %:',
      'Between 0.8 ',
      'Between 1 an',
      'Over 2 %: fo',
    ])
  })
})

// facts/film.md §5 (SMPTE RP 197 and common practice, from memory).
describe('2:3 pulldown', () => {
  it('shows AA BB BC CD DD', () => {
    const shown = [0, 1, 2, 3, 4].map((video) =>
      pulledFrame(video).fields.map(pulldownLetter).join(''),
    )
    expect(shown).toEqual(['AA', 'BB', 'BC', 'CD', 'DD'])
    expect([0, 1, 2, 3, 4].map((video) => pulledFrame(video).isWhole)).toEqual([
      ...[true, true, false, false, true],
    ])
  })

  it('makes of any 4 film frames 10 fields, in order, and tells both ways alike', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1000, max: 1000 }), (cycle) => {
        const fields = [0, 1, 2, 3, 4].flatMap((video) => pulledFrame(5 * cycle + video).fields)
        expect(fields).toEqual([0, 0, 1, 1, 1, 2, 2, 3, 3, 3].map((film) => 4 * cycle + film))
        for (let film = 4 * cycle; film < 4 * cycle + 4; film++) {
          const [first, last] = videoFramesOf(film)
          expect(pulledFrame(first).fields).toContain(film)
          expect(pulledFrame(last).fields).toContain(film)
          expect(pulledFrame(first - 1).fields).not.toContain(film)
          expect(pulledFrame(last + 1).fields).not.toContain(film)
        }
      }),
      { seed: 7, numRuns: 100 },
    )
  })
})
