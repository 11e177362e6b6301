import type { Answer } from '../../agreement/answer.ts'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import { cueChange } from '../change.ts'
import type { LabelledChange } from '../history.ts'
import type { Cue, Job } from '../job.ts'
import { MOST_ANSWERS } from '../limits.ts'
import type { CueId } from '../recordIds.ts'
import { cuesById } from './cueCommand.ts'

/** An answer and the cue it is about. */
export type GivenAnswer = { readonly cue: CueId; readonly answer: Answer }

/** Puts answers behind those that their cues have; one cue may get several. */
export const addAnswers = (
  job: Job,
  given: readonly GivenAnswer[],
  label = 'Take answers in',
): Result<LabelledChange> => {
  const byCue = new Map<CueId, Answer[]>()
  for (const { cue, answer } of given) byCue.set(cue, [...(byCue.get(cue) ?? []), answer])
  const cues = cuesById(job, [...byCue.keys()])
  if (!cues.ok) return cues
  const after = cues.value.map(
    (cue): Cue => ({ ...cue, answers: [...cue.answers, ...(byCue.get(cue.id) ?? [])] }),
  )
  if (after.some(({ answers }) => answers.length > MOST_ANSWERS))
    return fail(
      problem('too-large', `A cue holds at most ${MOST_ANSWERS} answers; begin another job.`, {
        field: 'answers',
      }),
    )
  return ok({ label, change: cueChange(cues.value, after) })
}
