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
    [30_000, 2_589_408],
    [60_000, 5_178_816],
  ])('a day of %i/1001 drop-frame labels goes there and back', (num, frames) => {
    const r = rate(num, 1001)
    expect(framesPerDay(r, true)).toBe(frames)
    for (let n = 0; n < frames; n += 97) {
      const back = parseTimecode(formatTimecode(n, r, true), r, true)
      if (!back.ok || back.value !== n) throw new Error(`frame ${n} comes back as another`)
    }
    expect(formatTimecode(frames, r, true)).toBe('00:00:00;00')
    expect(formatTimecode(-1, r, false)).toBe(num === 30_000 ? '23:59:59:29' : '23:59:59:59')
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
