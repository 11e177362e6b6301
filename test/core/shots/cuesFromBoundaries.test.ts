import { describe, expect, it } from 'vitest'
import type { Boundary, BoundaryKind } from '../../../src/core/shots/boundary.ts'
import { cuePlacements } from '../../../src/core/shots/cuesFromBoundaries.ts'
import { frame } from '../../../src/core/time/frame.ts'

const change = (kind: BoundaryKind, first: number, last = first, confidence = 0.9): Boundary => ({
  kind,
  first: frame(first),
  last: frame(last),
  confidence,
})

const placed = (...boundaries: readonly Boundary[]) =>
  cuePlacements(boundaries, 1000).map(({ kind, first, ramp }) => [kind, first, ramp])

describe('cues at changes of shot', () => {
  it('begin on a cut without a ramp, and on a gradual change with one over its frames', () => {
    expect(
      placed(change('cut', 40), change('dissolve', 100, 119), change('dip', 200, 212)),
    ).toEqual([
      ['cut', 40, 0],
      ['dissolve', 100, 20],
      ['dip', 200, 13],
    ])
  })

  it('take a fade out and the fade in after at most 75 frames of black for one change', () => {
    const out = change('fade-out', 100, 119, 0.6)
    expect(placed(out, change('fade-in', 195, 214))).toEqual([['fade-out', 100, 115]])
    expect(placed(out, change('fade-in', 196, 214))).toHaveLength(2)
    expect(cuePlacements([out, change('fade-in', 130, 140)], 1000)[0]?.confidence).toBe(0.6)
  })

  it('end the ramp of a fade out on the frame of the cut from black', () => {
    expect(placed(change('fade-out', 100, 119), change('cut', 130))).toEqual([
      ['fade-out', 100, 30],
    ])
  })

  it('leave out a fade in that opens the reel and a fade out that closes it', () => {
    expect(
      placed(change('fade-in', 5, 40), change('cut', 90), change('fade-out', 900, 930)),
    ).toEqual([['cut', 90, 0]])
  })

  it('never begin on frame 0, past the end, or twice on one frame', () => {
    expect(
      placed(change('cut', 0), change('cut', 50), change('dissolve', 50, 60), change('cut', 1000)),
    ).toEqual([['cut', 50, 0]])
  })
})
