import { expect, it } from 'vitest'
import { handOverLosses } from '../../../src/core/formats/handOverFiles.ts'
import { FORMATS_HANDED_OVER } from '../../../src/core/formats/prepareFormat.ts'
import { answerOf } from '../../support/sampleAnswer.ts'
import { REEL_ID, sampleJob } from '../../support/sampleJob.ts'

it('what formats say of a job comes to several of these', () => {
  const job = sampleJob(undefined, (cue) => ({
    ...cue,
    scene: 'harbour',
    answers: [answerOf(cue, { says: 'asked' })],
  }))
  const told = FORMATS_HANDED_OVER.flatMap((format) => handOverLosses(job, REEL_ID, format))
  expect(told.length).toBeGreaterThan(FORMATS_HANDED_OVER.length)
  const extents = new Set(told.map(({ extent }) => extent))
  expect([...extents].sort()).toEqual(['in part', 'kept, not applied', 'left out'])
})
