import { expect, test } from 'vitest'
import { passSegments } from '../../../src/work/pass/passSegments.ts'
import { sampleJob, sampleReel } from '../../support/sampleJob.ts'
import { samplePlan } from '../../support/samplePlan.ts'

test.each([
  [24, 1, 48],
  [24_000, 1001, 48],
  [25, 1, 50],
  [30_000, 1001, 60],
])('at %i/%i frames a second a segment has %i frames; all make up all', (num, den, length) => {
  const reel = sampleReel({ rate: { num, den }, frames: 1003 })
  const plan = samplePlan(
    { head: { bars: 1, slate: 0, leader: 3 } },
    sampleJob([0], undefined, reel),
  )
  const segments = passSegments(plan)
  expect(segments[0]).toEqual({ first: 0, end: length })
  for (const [i, { first }] of segments.entries())
    expect(first).toBe(i === 0 ? 0 : segments[i - 1]?.end)
  expect(segments.at(-1)?.end).toBe(plan.timeline.frames)
})
