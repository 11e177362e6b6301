import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatFootage } from '../../../src/core/time/footage.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { parsePosition, type ReelCount } from '../../../src/core/time/parsePosition.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { formatTimecode } from '../../../src/core/time/timecode.ts'

/** 10:00:00:00 at 25 frames a second, 35 mm, a little over two minutes. */
const REEL: ReelCount = {
  rate: rate(25),
  isDropFrame: false,
  startCount: 10 * 3600 * 25,
  gauge: '35mm-4perf',
  frames: 3100,
}

const DROP: ReelCount = {
  ...REEL,
  rate: rate(30_000, 1001),
  isDropFrame: true,
  startCount: 107_892,
  gauge: '16mm',
  frames: 40_000,
}

const at = (text: string, present = 0, reel = REEL) => parsePosition(text, reel, frame(present))

describe('a place on a reel, as it is typed', () => {
  it.each([
    ['10:00:11:05', 280],
    [' 10:00:00:00 ', 0],
    ['186+12', 2988],
    ['186 ft 12 fr', 2988],
    ['12 ft', 192],
    ['279', 279],
    ['frame 279', 279],
  ])('%s', (text, wanted) => {
    expect(at(text)).toEqual({ ok: true, value: wanted })
  })

  it('takes the fields left out at the front from the present place', () => {
    expect(at('11:05', 227)).toEqual({ ok: true, value: 280 })
    expect(at('1:00:10', 227)).toEqual({ ok: true, value: 1510 })
  })

  it('goes over midnight where the reel does', () => {
    const reel = { ...REEL, startCount: 24 * 3600 * 25 - 50 }
    expect(at('00:00:00:00', 0, reel)).toEqual({ ok: true, value: 50 })
  })

  it.each([REEL, DROP])('reads back what the screen shows', (reel) => {
    fc.assert(
      fc.property(fc.nat(reel.frames - 1), fc.nat(reel.frames - 1), (wanted, present) => {
        const label = formatTimecode(reel.startCount + wanted, reel.rate, reel.isDropFrame)
        const footage = formatFootage(wanted, reel.gauge)
        for (const text of [label, footage, String(wanted)])
          expect(at(text, present, reel)).toEqual({ ok: true, value: wanted })
      }),
      { seed: 3, numRuns: 200 },
    )
  })

  it.each([
    ['', /Write a timecode/u],
    ['soon', /Write a timecode/u],
    ['10:00:11:25', /frames go from 00 to 24/u],
    ['12+16', /does not hold/u],
    ['10:02:04:00', /goes from 10:00:00:00 to 10:02:03:24: frames 0 to 3099/u],
    ['09:59:59:24', /goes from/u],
    ['3100', /goes from/u],
  ])('refuses “%s” in a sentence', (text, says) => {
    const result = at(text)
    expect(result.ok).toBe(false)
    if (!result.ok) expect(result.problems[0].says).toMatch(says)
  })
})
