import { problem } from '../../base/problem.ts'
import { fail, type Result } from '../../base/result.ts'
import type { LabelledChange } from '../history.ts'
import type { Cue, Job } from '../job.ts'
import { GRADE_NAME_LIMIT, MOST_ALTERNATES } from '../limits.ts'
import type { CueId } from '../recordIds.ts'
import { cuesById, editCues } from './cueCommand.ts'

/** The name a cue's next grade gets: the first letter that none of its grades has. */
export const nextGradeName = ({ gradeName, alternates }: Cue): string => {
  const taken = new Set([gradeName, ...alternates.map(({ name }) => name)])
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'
  return [...letters].find((letter) => !taken.has(letter)) ?? `${alternates.length + 2}`
}

/**
 * Keeps the grade in force of each of these cues as an alternate beside it, so that it can be
 * changed and come back. The alternate takes over the grade's name (A where it has none), and the
 * grade in force gets the next letter. Refuses a cue that has `MOST_ALTERNATES`.
 */
export const keepAlternate = (job: Job, ids: readonly CueId[]): Result<LabelledChange> => {
  const cues = cuesById(job, ids)
  if (!cues.ok) return cues
  if (cues.value.some(({ alternates }) => alternates.length >= MOST_ALTERNATES))
    return fail(
      problem('too-large', `A cue keeps at most ${MOST_ALTERNATES} alternates; drop one first.`),
    )
  return editCues(job, ids, 'Keep as alternate', (cue) => {
    const kept = {
      name: cue.gradeName === '' ? nextGradeName(cue) : cue.gradeName,
      grade: cue.grade,
    }
    const after = { ...cue, alternates: [...cue.alternates, kept] }
    return { ...after, gradeName: nextGradeName({ ...after, gradeName: kept.name }) }
  })
}

/** Puts one of a cue's alternates (by its place, from 0) in force; the grade in force takes its place. */
export const promoteAlternate = (job: Job, id: CueId, index: number): Result<LabelledChange> =>
  withAlternate(job, id, index, 'Promote alternate', (cue, { name, grade }) => ({
    ...cue,
    grade,
    gradeName: name,
    alternates: cue.alternates.with(index, {
      name: cue.gradeName === '' ? nextGradeName(cue) : cue.gradeName,
      grade: cue.grade,
    }),
  }))

/** Takes one of a cue's alternates away. */
export const dropAlternate = (job: Job, id: CueId, index: number): Result<LabelledChange> =>
  withAlternate(job, id, index, 'Drop alternate', (cue) => ({
    ...cue,
    alternates: cue.alternates.toSpliced(index, 1),
  }))

/** Names one of a cue's alternates, or with −1 the grade in force: at most 100 characters. */
export const renameGrade = (
  job: Job,
  id: CueId,
  index: number,
  name: string,
): Result<LabelledChange> => {
  if (name.length > GRADE_NAME_LIMIT)
    return fail(
      problem(
        'too-large',
        `A grade's name has at most ${GRADE_NAME_LIMIT} characters; shorten it.`,
      ),
    )
  if (index === -1)
    return editCues(job, [id], 'Name grade', (cue) =>
      cue.gradeName === name ? cue : { ...cue, gradeName: name },
    )
  return withAlternate(job, id, index, 'Name alternate', (cue, { name: before, grade }) =>
    name === before ? cue : { ...cue, alternates: cue.alternates.with(index, { name, grade }) },
  )
}

const withAlternate = (
  job: Job,
  id: CueId,
  index: number,
  label: string,
  edit: (cue: Cue, alternate: Cue['alternates'][number]) => Cue,
): Result<LabelledChange> => {
  const alternate = job.cues[id]?.alternates[index]
  if (!alternate)
    return fail(problem('not-found', 'The cue has no such alternate any more; choose again.'))
  return editCues(job, [id], label, (cue) => edit(cue, alternate))
}
