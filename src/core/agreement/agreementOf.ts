import { cueIndexAt, cuesOfReel } from '../job/cueList.ts'
import type { Cue, Job } from '../job/job.ts'
import { toleranceOf } from '../tolerance/findProfile.ts'
import type { Answer } from './answer.ts'
import { type CueLook, cueLook, type LookGround, sameLook } from './cueLook.ts'

/** How a cue stands with who agrees to it: as was said of it, or changed since it was agreed. */
export type Agreement = 'open' | 'agreed' | 'asked' | 'changed'

/** What was said last of a cue. */
export const lastAnswer = ({ answers }: Cue): Answer | undefined => answers.at(-1)

/** How an answer stands with the look a cue has now. */
const answerStands = ({ says, alternate, look }: Answer, now: CueLook): Agreement => {
  if (says !== 'agreed' || sameLook(look, now)) return says
  // Who agrees to an alternate asks for it, until it is the grade in force.
  return alternate === null ? 'changed' : 'asked'
}

/**
 * How the cue at `index` stands. It is 'changed' where anything that decides its pictures is not
 * what was agreed; brought back to that, by undo or by hand, it is agreed as before.
 */
export const agreementAt = (ground: LookGround, index: number): Agreement => {
  const cue = ground.cues[index]
  const answer = cue && lastAnswer(cue)
  const now = answer?.says === 'agreed' ? cueLook(ground, index) : undefined
  if (!answer) return 'open'
  return now ? answerStands(answer, now) : answer.says
}

/** The same of a cue of a job. */
export const agreementOf = (job: Job, cue: Cue): Agreement => {
  const reel = job.reels[cue.reel]
  if (!reel) return 'open'
  const cues = cuesOfReel(job, cue.reel)
  return agreementAt(
    { reel, cues, profile: toleranceOf(job.info.job) },
    cueIndexAt(cues, cue.first),
  )
}
