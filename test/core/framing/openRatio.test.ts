import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  BLANKING_RATIOS,
  blankingFor,
  namedRatio,
  openRatio,
} from '../../../src/core/framing/openRatio.ts'
import { arbAspect } from './arbFraming.ts'

describe('blanking to a ratio', () => {
  it('leaves that ratio open, whatever the delivered shape', () => {
    fc.assert(
      fc.property(arbAspect, fc.double({ min: 1, max: 2.8, noNaN: true }), (aspect, ratio) => {
        expect(openRatio(blankingFor(ratio, aspect), aspect)).toBeCloseTo(ratio, 9)
      }),
    )
  })

  it('blanks above and below where the ratio is wider than the picture, else at the sides', () => {
    // 16 : 9 with 2.39 open: 1920×803.3; with 4 : 3 open: 1440×1080 (computed).
    expect((1 - blankingFor(2.39, 16 / 9)) * 1080).toBeCloseTo(803.35, 2)
    expect((1 + blankingFor(4 / 3, 16 / 9)) * 1920).toBeCloseTo(1440, 9)
    expect(blankingFor(16 / 9, 16 / 9)).toBe(0)
    expect(blankingFor(1.85, 4 / 3)).toBeGreaterThan(0)
  })

  it('is told by its name, and free between', () => {
    for (const { name, ratio } of BLANKING_RATIOS)
      expect(namedRatio(Number(blankingFor(ratio, 16 / 9).toFixed(5)), 16 / 9)?.name).toBe(name)
    expect(namedRatio(0.1, 16 / 9)).toBeUndefined()
  })
})
