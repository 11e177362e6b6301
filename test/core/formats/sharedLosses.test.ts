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
