import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { cueIndexAt, cuesOfReel } from '../job/cueList.ts'
import type { Cue, Job } from '../job/job.ts'
import type { CueId } from '../job/recordIds.ts'
import { toleranceOf } from '../tolerance/findProfile.ts'
import { lastAnswer } from './agreementOf.ts'
import type { Answer } from './answer.ts'
import type { AnswerFile } from './answerFile.ts'
import { type CueLook, cueLook, lookSum } from './cueLook.ts'
import { lookChanges } from './lookChanges.ts'

/** One answer of a file, and what taking it in would be. */
export type PlannedAnswer = {
  readonly cue: CueId
  readonly answer: Answer
  /** 'gone': the job has no such cue any more. */
  readonly outcome: 'new' | 'taken already' | 'gone'
  /** What of the cue's pictures was changed since the pack was made, in words. */
  readonly changes: readonly string[]
}

/** Two reviewers or more who do not say the same of a cue; a person chooses whose word holds. */
export type AnswerConflict = { readonly cue: CueId; readonly answers: readonly Answer[] }

/** What taking answer files into a job would do. */
export type AnswerPlan = {
  readonly job: Job
  readonly rows: readonly PlannedAnswer[]
  readonly conflicts: readonly AnswerConflict[]
}

/** Whether two answers ask for the same. */
export const saysAlike = (a: Answer, b: Answer): boolean =>
  a.says === b.says && a.alternate === b.alternate

/** All of an answer but its look, as what answers of one moment are put in order by. */
const wordsOf = ({ look: _, ...said }: Answer): string => JSON.stringify(said)

/** The same words of the same person: an answer is never changed after it was given. */
const isSame = (a: Answer, b: Answer): boolean =>
  a.at === b.at && a.by === b.by && a.sha256 === b.sha256 && wordsOf(a) === wordsOf(b)

/** The look a cue would be shown with now to whoever gave this answer. */
const lookNow = (job: Job, cue: Cue, { alternate }: Answer): CueLook | undefined => {
  const reel = job.reels[cue.reel]
  if (!reel) return undefined
  const cues = cuesOfReel(job, cue.reel)
  const kept = cue.alternates.find(({ name }) => name === alternate)
  const ground = { reel, cues, profile: toleranceOf(job.info.job) }
  return cueLook(ground, cueIndexAt(cues, cue.first), kept?.grade)
}

const momentOf = ({ at }: Answer): number => (at === null ? -Infinity : Date.parse(at))

/**
 * Earlier first, as moments: a time may have parts of a second or none. Those of one moment by what
 * they say, so that the order of files is no matter.
 */
export const byTime = (a: Answer, b: Answer): number => {
  const [one, two] = [momentOf(a), momentOf(b)]
  if (one !== two) return one < two ? -1 : 1
  const [said, other] = [wordsOf(a), wordsOf(b)]
  if (said === other) return 0
  return said < other ? -1 : 1
}

/** Ids of a file may be names that every record has, such as `constructor`. */
const cueNamed = (job: Job, id: CueId): Cue | undefined =>
  Object.hasOwn(job.cues, id) ? job.cues[id] : undefined

const planned = (job: Job, id: CueId, answer: Answer): PlannedAnswer => {
  const cue = cueNamed(job, id)
  if (!cue) return { cue: id, answer, outcome: 'gone', changes: [] }
  if (cue.answers.some((each) => isSame(each, answer)))
    return { cue: id, answer, outcome: 'taken already', changes: [] }
  const now = lookNow(job, cue, answer)
  const isAsSeen = !now || lookSum(now) === answer.sha256
  return { cue: id, answer, outcome: 'new', changes: isAsSeen ? [] : lookChanges(answer.look, now) }
}

/** Who is of another mind about a cue: the last word of each, with the word that holds now. */
const conflictOf = (cue: Cue, fresh: readonly Answer[]): AnswerConflict | undefined => {
  const latest = new Map<string, Answer>()
  const standing = lastAnswer(cue)
  if (standing && standing.by !== '') latest.set(standing.by, standing)
  for (const answer of fresh.toSorted(byTime)) {
    const before = latest.get(answer.by)
    if (!before || byTime(before, answer) < 0) latest.set(answer.by, answer)
  }
  const answers = [...latest.values()].filter(({ says }) => says !== 'open').toSorted(byTime)
  const [first] = answers
  return first && answers.some((each) => !saysAlike(first, each))
    ? { cue: cue.id, answers }
    : undefined
}

const refusal = ({ title, reel }: AnswerFile) =>
  problem(
    'conflict',
    `The answer is for a review pack of the job “${title}”, reel “${reel.name}”, and not of this job; open that one and take it in there.`,
  )

/**
 * What taking these answer files in would do, in whatever order they come: each answer with what
 * changed since it was given, and where reviewers are not of one mind. Refuses, by name, the answer
 * to a pack of another job.
 */
export const planAnswers = (job: Job, files: readonly AnswerFile[]): Result<AnswerPlan> => {
  const [foreign, ...more] = files.filter(
    ({ pack, reel }) => !Object.hasOwn(job.packs, pack) && !Object.hasOwn(job.reels, reel.id),
  )
  if (foreign) return fail(refusal(foreign), ...more.map(refusal))
  const rows: PlannedAnswer[] = []
  for (const { answers } of files)
    for (const { cue, answer } of answers)
      if (!rows.some((row) => row.cue === cue && isSame(row.answer, answer)))
        rows.push(planned(job, cue, answer))
  const fresh = new Map<CueId, Answer[]>()
  for (const { cue, answer, outcome } of rows)
    if (outcome === 'new') fresh.set(cue, [...(fresh.get(cue) ?? []), answer])
  const conflicts = [...fresh].flatMap(([id, answers]) => {
    const cue = cueNamed(job, id)
    const conflict = cue && conflictOf(cue, answers)
    return conflict ? [conflict] : []
  })
  return ok({ job, rows, conflicts })
}
