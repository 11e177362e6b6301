import { describe, expect, it } from 'vitest'
import { reelFromFacts, timecodeNotTaken } from '../../src/app/reelFromFacts.ts'
import { type Rate, rate } from '../../src/core/time/rate.ts'
import { formatTimecode } from '../../src/core/time/timecode.ts'
import type { MediaFacts } from '../../src/media/mediaFacts.ts'

const FACTS: MediaFacts = {
  name: 'reel_####.dpx',
  container: 'DPX sequence',
  codec: 'DPX',
  width: 2048,
  height: 1556,
  displayAspect: 2048 / 1556,
  depth: 10,
  layout: 'rgb',
  frames: 100,
  rate: undefined,
  matrix: 'bt709',
  range: 'full',
  bytes: 1,
}

const reelAt = (reelRate: Rate, facts: Partial<MediaFacts>) =>
  reelFromFacts({ ...FACTS, ...facts }, { matrix: 'bt709', range: 'full', rate: reelRate })

const startOf = (reelRate: Rate, startTimecode?: string) => {
  const reel = reelAt(reelRate, startTimecode === undefined ? {} : { startTimecode })
  return formatTimecode(reel.startCount, reel.rate, reel.isDropFrame)
}

describe('the timecode of a reel’s first frame', () => {
  it('is the one the file states', () => {
    expect(startOf(rate(24), '01:00:03:06')).toBe('01:00:03:06')
    expect(startOf(rate(30_000, 1001), '01:00:03:06')).toBe('01:00:03;06')
  })
  it('drops no frames where the label is one that drop-frame counting leaves out', () => {
    expect(startOf(rate(30_000, 1001), '01:01:00:00')).toBe('01:01:00:00')
  })
  it('is ten hours where none is stated, or one that the rate cannot have', () => {
    expect(startOf(rate(25))).toBe('10:00:00:00')
    expect(startOf(rate(24), '01:00:03:29')).toBe('10:00:00:00')
    expect(startOf(rate(30_000, 1001))).toBe('10:00:00;00')
  })
})

it('a file that states printing density makes a reel of that base; others make a print', () => {
  expect(reelAt(rate(24), { scanHint: 'printing-density' }).base.scan).toBe('printing-density')
  expect(reelAt(rate(24), {}).base.scan).toBe('print')
})

it('a reel is named for its scan, without extension or numbers', () => {
  const names = [
    'night.mov',
    'night_0086.dpx',
    'night_####.dpx',
    '####.dpx',
    'a.b-####.tif',
    '.mov',
  ]
  expect(names.map((name) => reelAt(rate(25), { name }).name)).toEqual([
    'night',
    'night_0086',
    'night',
    '####',
    'a.b',
    '.mov',
  ])
})

it('a timecode that cannot be taken over is told, one that can is not', () => {
  const told = (reelRate: Rate, startTimecode: string) => {
    const facts = { ...FACTS, startTimecode }
    return timecodeNotTaken(facts, reelAt(reelRate, { startTimecode }))
  }
  expect(told(rate(24), '01:00:03:29')).toBe(
    'reel_####.dpx begins at 01:00:03:29, which is no timecode at 24 frames a second; the reel is counted from 10:00:00:00.',
  )
  expect(told(rate(30), '01:00:03:29')).toBeUndefined()
  expect(told(rate(30_000, 1001), '01:00:03:29')).toBeUndefined()
  expect(told(rate(30_000, 1001), '01:01:00:00')).toBeUndefined()
  expect(timecodeNotTaken(FACTS, reelAt(rate(24), {}))).toBeUndefined()
})
