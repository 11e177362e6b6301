import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allOf, tintOf, withAll, withTint } from '../../../src/core/colour/gradeViews.ts'

const level = fc.double({ min: -0.5, max: 2, noNaN: true })
const triple = fc.tuple(level, level, level)
const part = fc.double({ min: -0.3, max: 0.3, noNaN: true })

describe('the views of a triple', () => {
  it('all and tint together are the triple', () => {
    fc.assert(
      fc.property(triple, (t) => {
        for (const [c, value] of withTint(withAll([0, 0, 0], allOf(t)), tintOf(t)).entries())
          expect(value).toBeCloseTo(t[c] ?? Number.NaN, 8)
      }),
      { seed: 5 },
    )
  })

  it('a tint leaves all alone, and comes back as it was set', () => {
    fc.assert(
      fc.property(triple, part, part, (t, cb, cr) => {
        const tinted = withTint(t, { cb, cr })
        expect(allOf(tinted)).toBeCloseTo(allOf(t), 8)
        expect(tintOf(tinted).cb).toBeCloseTo(cb, 8)
        expect(tintOf(tinted).cr).toBeCloseTo(cr, 8)
      }),
      { seed: 5 },
    )
  })

  it('lies where BT.709 bars lie: full red is Cr 0.5, full blue Cb 0.5 (BT.709-6 §3.3)', () => {
    expect(tintOf([1, 0, 0]).cr).toBeCloseTo(0.5, 9)
    expect(tintOf([0, 0, 1]).cb).toBeCloseTo(0.5, 9)
    expect(tintOf([0.7, 0.7, 0.7])).toEqual({ cb: 0, cr: 0 })
  })
})
