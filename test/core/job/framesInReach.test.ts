import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cueIndexAt, cuesOfReel } from '../../../src/core/job/cueList.ts'
import { framesInReach } from '../../../src/core/job/framesInReach.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

test('frames to look through are of the reel, each once, bounded, the cue at the line first', () => {
  const firsts = fc.uniqueArray(fc.integer({ min: 1, max: 4999 }), { maxLength: 200 })
  fc.assert(
    fc.property(firsts, fc.integer({ min: 0, max: 4999 }), (others, at) => {
      const sorted = [0, ...others.toSorted((a, b) => a - b)]
      const job = sampleJob(sorted, (cue) => cue, sampleReel({ frames: 5000 }))
      const cues = cuesOfReel(job, REEL_ID)
      const frames = framesInReach(cues, 5000, frame(at))
      expect(frames.length).toBeLessThanOrEqual(168)
      expect(new Set(frames).size).toBe(frames.length)
      for (const each of frames) expect(each).toSatisfy((f: number) => f >= 0 && f < 5000)
      expect(cueIndexAt(cues, frames[0] ?? frame(-1))).toBe(cueIndexAt(cues, frame(at)))
    }),
  )
})

test('a cue shorter than what is wanted of it gives each of its frames', () => {
  const cues = cuesOfReel(sampleJob([0, 100, 103]), REEL_ID)
  expect(framesInReach(cues, 1000, frame(101)).slice(0, 3)).toEqual([100, 101, 102])
})
