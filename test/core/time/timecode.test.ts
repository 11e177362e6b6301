import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rate, snapRate } from '../../../src/core/time/rate.ts'
import { formatTimecode, framesPerDay, parseTimecode } from '../../../src/core/time/timecode.ts'
import vectors from '../../vectors/timecode.json' with { type: 'json' }

const rateOf = ([num = 25, den = 1]: readonly number[]) => rate(num, den)

describe('timecode', () => {
  it.each(vectors.rows)('frame $frame is $label', ({ frame, label, rate: r, dropFrame }) => {
    expect(formatTimecode(frame, rateOf(r), dropFrame)).toBe(label)
    const day = framesPerDay(rateOf(r), dropFrame)
    expect(parseTimecode(label, rateOf(r), dropFrame)).toEqual({ ok: true, value: frame % day })
  })

  it.each(vectors.refused)('refuses $label', ({ label, rate: r, dropFrame }) => {
    expect(parseTimecode(label, rateOf(r), dropFrame).ok).toBe(false)
  })

  it.each([
    [30_000, 2, 2_589_408],
    [60_000, 4, 5_178_816],
  ])(
    'a whole day of %i/1001 drop-frame labels leaves out %i numbers, and no others',
    (num, dropped, frames) => {
      const r = rate(num, 1001)
      const nominal = num / 1000
      expect(framesPerDay(r, true)).toBe(frames)
      // A counter of hours, minutes, seconds and frames, as an independent second implementation.
      let [hour, minute, second, count] = [0, 0, 0, 0]
      const two = (n: number) => (n < 10 ? `0${n}` : `${n}`)
      for (let n = 0; n < frames; n++) {
        const isEdge = count < dropped || count === nominal - 1
        if (isEdge || n % 97 === 0) {
          const label = `${two(hour)}:${two(minute)}:${two(second)};${two(count)}`
          if (formatTimecode(n, r, true) !== label) throw new Error(`frame ${n} is not ${label}`)
          const back = parseTimecode(label, r, true)
          if (!back.ok || back.value !== n) throw new Error(`${label} comes back as another frame`)
        }
        count++
        if (count < nominal) continue
        count = 0
        second++
        if (second < 60) continue
        second = 0
        minute = (minute + 1) % 60
        if (minute === 0) hour++
        if (minute % 10 !== 0) count = dropped
      }
      expect([hour, minute, second, count]).toEqual([24, 0, 0, 0])
      expect(formatTimecode(frames, r, true)).toBe('00:00:00;00')
      expect(formatTimecode(-1, r, false)).toBe(num === 30_000 ? '23:59:59:29' : '23:59:59:59')
    },
  )

  it('goes there and back at any rate, wrapping after a day', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(
          rate(24),
          rate(25),
          rate(50),
          rate(24_000, 1001),
          rate(16_667, 1000),
          rate(1, 4),
          rate(120),
          rate(30_000, 1001),
          rate(60_000, 1001),
        ),
        fc.boolean(),
        fc.integer({ min: -10_000_000, max: 30_000_000 }),
        (r, isDropFrame, count) => {
          const day = framesPerDay(r, isDropFrame)
          const label = formatTimecode(count, r, isDropFrame)
          expect(label).toMatch(/^\d\d:\d\d:\d\d[:;]\d{2,3}$/u)
          expect(parseTimecode(label, r, isDropFrame)).toEqual({
            ok: true,
            value: ((count % day) + day) % day,
          })
        },
      ),
      { seed: 1, numRuns: 3000 },
    )
  })

  it('reads no text as a frame outside the day, and never fails otherwise than by saying why', () => {
    const part = fc.integer({ min: 0, max: 130 }).map((n) => String(n).padStart(2, '0'))
    const text = fc.oneof(
      fc.string(),
      fc
        .tuple(part, part, part, fc.constantFrom(':', ';', '.'), part)
        .map(([h, m, s, mark, f]) => `${h}:${m}:${s}${mark}${f}`),
    )
    fc.assert(
      fc.property(text, fc.boolean(), (label, isDropFrame) => {
        const r = rate(30_000, 1001)
        const count = parseTimecode(label, r, isDropFrame)
        if (count.ok)
          expect(
            parseTimecode(formatTimecode(count.value, r, isDropFrame), r, isDropFrame),
          ).toEqual(count)
        else expect(count.problems[0].says).toContain(label)
      }),
      { seed: 2, numRuns: 2000 },
    )
  })

  it('counts a day of 25 in 2,160,000 frames', () => {
    expect(framesPerDay(rate(25), false)).toBe(2_160_000)
  })
})

describe('rates', () => {
  it.each([
    [25, 25, 1],
    [29.97003, 30_000, 1001],
    [23.976, 24_000, 1001],
    [59.94, 60_000, 1001],
    [22.899, 22_899, 1000],
    [16.667, 16_667, 1000],
  ])('%f frames a second is %i/%i', (measured, num, den) => {
    expect(snapRate(measured)).toEqual(rate(num, den))
  })
})
