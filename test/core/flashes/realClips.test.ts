import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { newCue } from '../../../src/core/job/newCue.ts'
import type { CueId, ReelId } from '../../../src/core/job/recordIds.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { rate } from '../../../src/core/time/rate.ts'
import { openMediaNode } from '../../../src/media/node/openMediaNode.ts'
import { checkFlashes } from '../../../src/work/checkFlashes.ts'
import { builtKernel } from '../../kernel/builtKernel.ts'

const MEDIA = resolve(import.meta.dirname, '../../media/video')
const kernel = await builtKernel()

/** Ordinary pictures: test cards, a street, a screen, cartoons. A shower of false alarms helps nobody. */
test.each([
  'city-405p25-mpeg2.mpg',
  'dv-pal-576p25-testcard.mov',
  'nasa-13013-multistream.mp4',
  'screencast-576p25-nocut.avi',
  'silent-comedy-360p25-nocut.mp4',
  'street-dip-to-white-360p.mp4',
])('%s passes no limit', async (file) => {
  const opened = await openMediaNode(`${MEDIA}/${file}`)
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const source = opened.value
  const cue = newCue('cue' as CueId, 'reel' as ReelId, frame(0), { kind: 'start', confidence: 1 })
  const half = { ...cue, first: frame(Math.floor(source.facts.frames / 2)) }
  const coding = { matrix: 'bt709', range: 'narrow', base: PRINT_BASE } as const
  const checks = [
    { cue, previous: undefined, end: half.first },
    { cue: half, previous: cue, end: frame(source.facts.frames) },
  ]
  const at = source.facts.rate ?? rate(25)
  const told: number[] = []
  const report = await checkFlashes(source, kernel, { checks, coding, rate: at }, (done) =>
    told.push(done),
  )
  source.close()
  expect(report?.frames).toBe(told.at(-1))
  expect(report?.breaches).toEqual([])
  expect(report?.series.up.some((area) => area > 0)).toBe(true)
})
