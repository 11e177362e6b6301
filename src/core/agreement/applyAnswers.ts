import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { cueChange } from '../job/change.ts'
import { cueNumber, cuesOfReel } from '../job/cueList.ts'
import type { LabelledChange } from '../job/history.ts'
import type { Cue, Job } from '../job/job.ts'
import { MOST_ANSWERS } from '../job/limits.ts'
import type { CueId } from '../job/recordIds.ts'
import type { Answer } from './answer.ts'
import { type AnswerPlan, byTime, saysAlike } from './planAnswers.ts'

/** Whose word holds on each cue where reviewers are not of one mind: the name as they gave it. */
export type AnswerChoices = ReadonlyMap<CueId, string>

/** Whether a fresh answer goes before one that is there: it is older, and nothing turns on it. */
const goesBefore = (fresh: Answer, there: Answer): boolean =>
  there.pack !== null &&
  byTime(fresh, there) < 0 &&
  (fresh.by === there.by || saysAlike(fresh, there))

/** Answers with another among them: at the end, or before later ones where nothing turns on it. */
const withAnswer = (answers: readonly Answer[], fresh: Answer): readonly Answer[] => {
  let place = answers.length
  while (place > 0 && goesBefore(fresh, answers[place - 1] as Answer)) place--
  return [...answers.slice(0, place), fresh, ...answers.slice(place)]
}

/** The last word of a person put last of all. */
const withChosenLast = (answers: readonly Answer[], by: string | undefined): readonly Answer[] => {
  const chosen = by === undefined ? undefined : answers.findLast((each) => each.by === by)
  return chosen ? [...answers.filter((each) => each !== chosen), chosen] : answers
}

const numberIn = (job: Job, id: CueId): string => {
  const cue = job.cues[id]
  return cue ? `cue ${cueNumber(cuesOfReel(job, cue.reel), cue)}` : id
}

/**
 * Takes the fresh answers of a plan into the job, as one step. Where reviewers are not of one mind
 * a choice says whose word holds; without one nothing is taken. What was not in conflict comes to
 * the same in whatever order files are taken.
 */
export const applyAnswers = (
  job: Job,
  { job: planned, rows, conflicts }: AnswerPlan,
  choices: AnswerChoices,
): Result<LabelledChange> => {
  if (job !== planned)
    return fail(problem('conflict', 'The job was changed since the answers were read; read again.'))
  const open = conflicts.filter(({ cue, answers }) => {
    const by = choices.get(cue)
    return by === undefined || !answers.some((each) => each.by === by)
  })
  if (open.length > 0)
    return fail(
      problem(
        'conflict',
        `Reviewers are not of one mind about ${open.map(({ cue }) => numberIn(job, cue)).join(', ')}; choose whose word holds.`,
      ),
    )
  const before: Cue[] = []
  const after: Cue[] = []
  for (const id of new Set(rows.map(({ cue }) => cue))) {
    const cue = job.cues[id]
    const fresh = rows.filter((row) => row.cue === id && row.outcome === 'new')
    if (!cue || fresh.length === 0) continue
    const taken = fresh
      .map(({ answer }) => answer)
      .toSorted(byTime)
      .reduce(withAnswer, cue.answers)
    before.push(cue)
    after.push({ ...cue, answers: withChosenLast(taken, choices.get(id)) })
  }
  if (after.some(({ answers }) => answers.length > MOST_ANSWERS))
    return fail(
      problem('too-large', `A cue holds at most ${MOST_ANSWERS} answers; begin another job.`, {
        field: 'answers',
      }),
    )
  return ok({ label: 'Take answers in', change: cueChange(before, after) })
}
