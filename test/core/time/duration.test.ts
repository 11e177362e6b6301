import { describe, expect, it } from 'vitest'
import { formatSeconds } from '../../../src/core/time/duration.ts'
import { rate } from '../../../src/core/time/rate.ts'
import vectors from '../../vectors/footage.json' with { type: 'json' }

describe('seconds', () => {
  it.each([
    [0, rate(25), '0.0 s'],
    [105, rate(25), '4.2 s'],
    [1499, rate(25), '1:00.0'],
    [1500, rate(25), '1:00.0'],
    [1498, rate(25), '59.9 s'],
    [1605, rate(25), '1:04.2'],
    [93_105, rate(25), '1:02:04.2'],
    [89_999, rate(25), '1:00:00.0'],
    [-50, rate(25), '−2.0 s'],
    [-1, rate(25), '0.0 s'],
    [30_000, rate(30_000, 1001), '16:41.0'],
  ])('%i frames at %o are %s', (frames, r, text) => {
    expect(formatSeconds(frames, r)).toBe(text)
  })

  it.each(vectors.runningTimes)(
    '$frames frames run $time at $fps, as printed (facts film.md §2)',
    ({ frames, fps, time }) => {
      const [minutes, seconds = 0] = formatSeconds(frames, rate(fps)).split(':').map(Number)
      const [printedMinutes = 0, printedSeconds = 0] = time.split(':').map(Number)
      const apart = (minutes ?? 0) * 60 + seconds - (printedMinutes * 60 + printedSeconds)
      expect(Math.abs(apart)).toBeLessThanOrEqual(0.55)
    },
  )
})
