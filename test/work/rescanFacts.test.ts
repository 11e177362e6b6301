import { expect, it } from 'vitest'
import { rate } from '../../src/core/time/rate.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'
import { rescanFacts } from '../../src/work/rescanFacts.ts'
import { sampleReel } from '../support/sampleJob.ts'

const factsOf = (change: Partial<MediaFacts>): MediaFacts => {
  const { media, frames } = sampleReel()
  return { ...media, frames, rate: rate(25), ...change }
}

it('what the file states is taken, and what it leaves open stays as it was stated before', () => {
  const reel = sampleReel()
  const kept = rescanFacts(
    { ...reel, media: { ...reel.media, matrixBy: 'person', matrix: 'bt601' } },
    factsOf({ width: 2048, depth: 10, matrix: undefined, range: 'full' }),
  )
  expect(kept.media).toMatchObject({ width: 2048, depth: 10, range: 'full', rangeBy: 'file' })
  expect(kept.media).toMatchObject({ matrix: 'bt601', matrixBy: 'person' })
  expect(kept.rate).toEqual(rate(25))
  expect(kept.startCount).toBe(reel.startCount)
})

it('at another rate the reel begins at the same label', () => {
  // 10:00:00:00 is 36,000 s of 24 labels each.
  expect(rescanFacts(sampleReel(), factsOf({ rate: rate(24) })).startCount).toBe(864_000)
  // In drop-frame counting 108 labels are left out an hour: 1,080,000 − 1080 (ST 12-1).
  const dropped = rescanFacts(sampleReel(), factsOf({ rate: rate(30_000, 1001) }))
  expect(dropped).toMatchObject({ isDropFrame: true, startCount: 1_078_920 })
})
