import { agreementAt, lastAnswer } from '../../agreement/agreementOf.ts'
import type { Answer, AnswerSays } from '../../agreement/answer.ts'
import { cueLook, type LookGround, lookSum } from '../../agreement/cueLook.ts'
import { ok, type Result } from '../../base/result.ts'
import { toleranceOf } from '../../tolerance/findProfile.ts'
import { cueChange } from '../change.ts'
import { cueIndexAt, cuesOfReel } from '../cueList.ts'
import type { LabelledChange } from '../history.ts'
import type { Cue, Job } from '../job.ts'
import type { CueId } from '../recordIds.ts'
import { addAnswers } from './addAnswers.ts'
import { cuesById } from './cueCommand.ts'

const LABELS: Readonly<Record<AnswerSays, string>> = {
  open: 'Open',
  agreed: 'Agree',
  asked: 'Ask for changes',
}

/** Who says it, when, and what they add. */
export type Said = Pick<Answer, 'by' | 'at'> & Partial<Pick<Answer, 'note' | 'marks' | 'frame'>>

const PLAIN = { note: '', marks: [], frame: null } as const

/** Whether a cue stands as it is said to already, with nothing added. */
const isSaid = (ground: LookGround, index: number, says: AnswerSays, said: Said): boolean => {
  const cue = ground.cues[index]
  const last = cue && lastAnswer(cue)
  const { by, note = '', marks = [] } = said
  return (
    agreementAt(ground, index) === says &&
    (last?.by ?? by) === by &&
    note === (last?.note ?? '') &&
    marks.length === 0
  )
}

/** The answer of a cue as its pictures are now; of the grade of an alternate where it is named. */
const answerOf = (
  ground: LookGround,
  cue: Cue,
  says: AnswerSays,
  said: Said,
  alternate: string | null,
): Answer | undefined => {
  const index = cueIndexAt(ground.cues, cue.first)
  if (alternate === null && isSaid(ground, index, says, said)) return undefined
  const look = cueLook(ground, index, cue.alternates.find(({ name }) => name === alternate)?.grade)
  if (!look) return undefined
  const told = { ...PLAIN, ...said, says, alternate, pack: null, signature: null }
  return { ...told, look, sha256: lookSum(look) }
}

/**
 * Says of cues that they are agreed, that changes are asked, or that they are open again. What is
 * agreed is what decides their pictures now: agreeing to a cue that was changed since agrees to what
 * it became. Naming an `alternate` says it of that grade.
 */
export const setAgreement = (
  job: Job,
  ids: readonly CueId[],
  says: AnswerSays,
  said: Said,
  alternate: string | null = null,
): Result<LabelledChange> => {
  const cues = cuesById(job, ids)
  if (!cues.ok) return cues
  const profile = toleranceOf(job.info.job)
  const given = cues.value.flatMap((cue) => {
    const reel = job.reels[cue.reel]
    const ground = reel && { reel, cues: cuesOfReel(job, cue.reel), profile }
    const answer = ground && answerOf(ground, cue, says, said, alternate)
    return answer ? [{ cue: cue.id, answer }] : []
  })
  if (given.length === 0) return ok({ label: LABELS[says], change: cueChange([], []) })
  return addAnswers(job, given, LABELS[says])
}
