import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cuesOfReel } from '../../../src/core/job/cueList.ts'
import { valuesAt } from '../../../src/core/job/valuesAt.ts'
import { frame } from '../../../src/core/time/frame.ts'
import {
  leaderHeight,
  rampPath,
  slotFrame,
  stillSlots,
  tailHeight,
} from '../../../src/ui/ledger/rowLayout.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

const [first, second] = cuesOfReel(
  sampleJob([0, 100], (cue, i) => ({
    ...cue,
    ramp: i === 1 ? 10 : 0,
    rampShape: 'eased',
    grade: { ...cue.grade, saturation: i },
  })),
  REEL_ID,
)
if (!first || !second) throw new Error('no cues')

describe('stills along a row', () => {
  it('are as many as fit whole, and only those near the view are drawn', () => {
    expect(stillSlots(78, 45, 0, 78)).toEqual({ count: 1, from: 0, to: 1 })
    expect(stillSlots(30, 45, 0, 30)).toEqual({ count: 1, from: 0, to: 1 })
    const long = stillSlots(47_000, 45, 10_000, 10_700)
    expect(long.count).toBe(1000)
    expect([long.from, long.to]).toEqual([208, 232])
  })

  it('cover what is in view wherever it is', () => {
    const size = fc.integer({ min: 1, max: 100_000 })
    fc.assert(
      fc.property(size, fc.integer({ min: 20, max: 90 }), size, (height, still, view) => {
        const { count, from, to } = stillSlots(height, still, view, view + 600)
        const pitch = height / count
        expect(pitch).toBeGreaterThanOrEqual(Math.min(height, still))
        if (view < height) {
          expect(from * pitch).toBeLessThanOrEqual(view)
          expect(to * pitch).toBeGreaterThanOrEqual(Math.min(height - 1e-6, view + 600))
        }
      }),
    )
  })

  it('show frames of the cue in order; a single one is past the ramp', () => {
    const end = frame(400)
    const frames = [0, 1, 2, 3].map((slot) => slotFrame(second, end, slot, 4))
    expect(frames).toEqual([137, 212, 287, 362])
    expect(slotFrame(second, end, 0, 1)).toBe(206)
    expect(slotFrame(second, frame(101), 0, 1)).toBe(100)
  })
})

describe('a ramp on the strip', () => {
  it('is a straight line where values pass evenly', () => {
    expect(rampPath({ ...second, rampShape: 'linear' }, 160, 40)).toBe('M0.0 0.0L160.0 40.0')
  })

  it('bends as the values do where it is eased', () => {
    const points = rampPath(second, 100, 110).slice(1).split('L')
    const widths = points.map((point) => Number(point.split(' ')[0]))
    expect(widths[0]).toBe(0)
    expect(widths.at(-1)).toBe(100)
    expect(widths[8]).toBe(50)
    // A quarter of the way down: 3t² − 2t³ of the way across.
    expect(widths[4]).toBeCloseTo(15.6, 1)
    const midway = valuesAt({ ...second, ramp: 3 }, first, frame(100)).grade.saturation
    expect(midway * 100).toBeCloseTo(widths[4] ?? 0, 0)
  })
})

it('leader and tail leave the line its place at both ends of the reel', () => {
  for (const height of [300, 700, 1100]) {
    expect(leaderHeight(height) + tailHeight(height)).toBe(height - 29)
    expect(leaderHeight(height)).toBeGreaterThan(0)
  }
})
