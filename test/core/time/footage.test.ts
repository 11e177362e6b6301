import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  FRAMES_PER_FOOT,
  formatFootage,
  type Gauge,
  parseFootage,
} from '../../../src/core/time/footage.ts'
import vectors from '../../vectors/footage.json' with { type: 'json' }

describe('footage', () => {
  it.each(vectors.rows)('$feet feet of $gauge are $frames frames', ({ gauge, feet, frames }) => {
    expect(formatFootage(frames, gauge as Gauge)).toBe(`${feet} ft 00 fr`)
    expect(parseFootage(`${feet}`, gauge as Gauge)).toEqual({ ok: true, value: frames })
  })

  it.each(Object.keys(FRAMES_PER_FOOT) as Gauge[])(
    '%s goes there and back frame by frame',
    (gauge) => {
      for (let n = 0; n < 2000; n++)
        expect(parseFootage(formatFootage(n, gauge), gauge)).toEqual({ ok: true, value: n })
    },
  )

  it.each(vectors.threePerf.rows)(
    '3 perforations, 64 frames in 3 feet: frame $frames is $text',
    ({ frames, text }) => {
      expect(formatFootage(frames, '35mm-3perf')).toBe(text)
    },
  )

  it('never goes back, and each foot begins on its first whole frame', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(FRAMES_PER_FOOT) as Gauge[])),
        fc.integer({ min: 0, max: 5_000_000 }),
        (gauge, frames) => {
          expect(parseFootage(formatFootage(frames, gauge), gauge)).toEqual({
            ok: true,
            value: frames,
          })
          const [num, den] = FRAMES_PER_FOOT[gauge]
          const foot = Number(formatFootage(frames, gauge).split(' ')[0])
          expect(foot * num).toBeLessThanOrEqual(frames * den)
          expect((foot + 1) * num).toBeGreaterThan(frames * den)
        },
      ),
      { seed: 1, numRuns: 2000 },
    )
  })

  it('refuses more frames than a foot holds, and what is not a footage', () => {
    expect(parseFootage('3 ft 40 fr', '16mm').ok).toBe(false)
    expect(parseFootage('3 yards', '16mm').ok).toBe(false)
  })
})
