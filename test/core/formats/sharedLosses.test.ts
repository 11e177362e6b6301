import { expect, it } from 'vitest'
import { PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { sharedLosses } from '../../../src/core/formats/sharedLosses.ts'
import { says } from '../../support/lossWords.ts'
import { REEL_ID, sampleJob, sampleReel } from '../../support/sampleJob.ts'

it('a base that is not plain is said to be lost, and a plain one is not', () => {
  const jobOf = (base: typeof PRINT_BASE) => sampleJob(undefined, undefined, sampleReel({ base }))
  const losses = (base: typeof PRINT_BASE) => says(sharedLosses(jobOf(base), REEL_ID))
  expect(losses({ ...PRINT_BASE, scan: 'negative' })).toContain('The base')
  expect(losses(PRINT_BASE)).not.toContain('The base')
})

it('kinds of shot change, names of grades and words of other lists are told where they are lost', () => {
  const job = sampleJob(undefined, (cue, i) => ({
    ...cue,
    ...(i === 1 && { boundary: { kind: 'dissolve', confidence: 1 } as const }),
    ...(i === 2 && { gradeName: 'dusk' }),
    foreign: i === 3 ? [{ format: 'edl' as const, text: '{}' }] : [],
  }))
  const losses = says(sharedLosses(job, REEL_ID))
  expect(losses).toContain('The dissolve or fade at the beginning of cue 2')
  expect(losses).toContain('The name of the grade of cue 3.')
  expect(losses).toContain('other formats said of cue 4')
  expect(says(sharedLosses(job, REEL_ID, new Set(), 'edl'))).not.toContain('other formats')
  const carried = new Set(['boundaries', 'grade-names', 'other-words'] as const)
  expect(says(sharedLosses(job, REEL_ID, carried))).not.toMatch(/dissolve|name of|other formats/u)
})

it('what lists of other formats said of the whole reel is told', () => {
  const foreign = [{ format: 'otio' as const, text: '{}' }]
  const job = sampleJob(undefined, undefined, sampleReel({ foreign }))
  expect(says(sharedLosses(job, REEL_ID))).toContain('said as a whole')
  expect(says(sharedLosses(job, REEL_ID, new Set(), 'otio'))).not.toContain('as a whole')
})
