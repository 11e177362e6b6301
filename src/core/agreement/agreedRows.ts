import { cuesOfReel } from '../job/cueList.ts'
import type { Cue, Job, Reel } from '../job/job.ts'
import { toleranceOf } from '../tolerance/findProfile.ts'
import { type Agreement, agreementAt, lastAnswer } from './agreementOf.ts'
import type { Answer } from './answer.ts'
import { cueLook } from './cueLook.ts'
import { lookChanges } from './lookChanges.ts'

/** How one cue stands with who agrees to it. */
export type AgreedRow = {
  readonly cue: Cue
  /** As the ledger counts, from 1. */
  readonly number: number
  readonly standing: Agreement
  readonly answer: Answer | undefined
  /** What was changed since the last answer was given, in words. */
  readonly changes: readonly string[]
}

/** How the cues of a reel stand, in order. */
export const agreedRows = (job: Job, reel: Reel): readonly AgreedRow[] => {
  const cues = cuesOfReel(job, reel.id)
  const ground = { reel, cues, profile: toleranceOf(job.info.job) }
  return cues.map((cue, index) => {
    const answer = lastAnswer(cue)
    const now = answer && cueLook(ground, index)
    return {
      cue,
      number: index + 1,
      standing: agreementAt(ground, index),
      answer,
      changes: answer && now ? lookChanges(answer.look, now) : [],
    }
  })
}
