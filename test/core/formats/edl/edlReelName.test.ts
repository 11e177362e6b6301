import { describe, expect, it } from 'vitest'
import { edlReelName, edlReelNameIn } from '../../../../src/core/formats/edl/edlReelName.ts'
import type { ReelId } from '../../../../src/core/job/recordIds.ts'
import { sampleJob, sampleReel } from '../../../support/sampleJob.ts'

describe('names of reels in event lines', () => {
  it.each([
    ['Orlop reel 1', 'ORLOP_RE'],
    ['Zürich', 'ZURICH'],
    ['bl', 'BL_1'],
    ['???', 'REEL'],
  ])('name the reel %s as %s', (name, short) => {
    expect(edlReelName(name)).toBe(short)
  })

  it('give reels whose names begin alike names of their own', () => {
    const reels = ['Orlop reel 1', 'Orlop reel 2', 'ORLOP_RE', 'Orlop re 2'].map((name, i) =>
      sampleReel({ id: `reel-${i}` as ReelId, name }),
    )
    const job = { ...sampleJob(), reels: Object.fromEntries(reels.map((reel) => [reel.id, reel])) }
    expect(reels.map(({ id }) => edlReelNameIn(job, id))).toEqual([
      'ORLOP_RE',
      'ORLOP_2',
      'ORLOP_3',
      'ORLOP_4',
    ])
  })
})
