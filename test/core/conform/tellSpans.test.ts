import fc from 'fast-check'
import { expect, it } from 'vitest'
import { tellEnd, tellGaps, tellOverlaps } from '../../../src/core/conform/tellSpans.ts'

const REEL_FRAMES = 60

const anySpans = fc.array(
  fc
    .tuple(fc.integer({ min: -10, max: 70 }), fc.integer({ min: 0, max: 20 }))
    .map(([from, length]) => ({ from, to: from + length })),
  { maxLength: 8 },
)

/** The first number of frames in a sentence, or 0 where nothing is told. */
const framesIn = (told: readonly { readonly says: string }[]): number =>
  Number(/(\d+) frames?\b/u.exec(told[0]?.says ?? '')?.[1] ?? 0)

it('tells as many frames in gaps, in several spans and after the end as counting them does', () => {
  let told = 0
  fc.assert(
    fc.property(anySpans, (spans) => {
      const times = Array.from(
        { length: REEL_FRAMES },
        (_, at) => spans.filter(({ from, to }) => from <= at && at < to).length,
      )
      const first = times.findIndex((count) => count > 0)
      const last = times.findLastIndex((count) => count > 0)
      const empty = times.filter((count, at) => count === 0 && at > first && at < last).length
      expect(framesIn(tellGaps(spans, REEL_FRAMES))).toBe(first < 0 ? 0 : empty)
      const several = times.filter((count) => count > 1).length
      expect(framesIn(tellOverlaps(spans, REEL_FRAMES))).toBe(several)
      const after = last < 0 ? 0 : REEL_FRAMES - 1 - last
      expect(framesIn(tellEnd(spans, REEL_FRAMES, []))).toBe(after)
      if (empty > 0 && several > 0 && after > 0) told++
    }),
    { seed: 1, numRuns: 2000 },
  )
  expect(told).toBeGreaterThan(100)
})
