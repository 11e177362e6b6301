import { type Problem, problem } from '../base/problem.ts'
import { foreignOf } from '../job/foreignOf.ts'
import type { Cue, Foreign, Job, Reel } from '../job/job.ts'
import { CUE_FOREIGN_LIMIT, JOB_FOREIGN_LIMIT, REEL_FOREIGN_LIMIT } from '../job/limits.ts'
import { foreignWithin } from './checkDecision.ts'

const lengthOf = (foreign: Foreign): number =>
  foreign.reduce((sum, { text }) => sum + text.length, 0)

/** Characters of other lists that a job keeps in all. */
const keptNow = (job: Job): number => {
  let sum = 0
  for (const { foreign } of Object.values<Reel>(job.reels)) sum += lengthOf(foreign)
  for (const { foreign } of Object.values<Cue>(job.cues)) sum += lengthOf(foreign)
  return sum
}

type Kept<Row> = {
  /** The rows, without what is not kept of their decisions. */
  readonly rows: readonly Row[]
  /** What is kept of the list as a whole. */
  readonly foreign: Foreign
  /** Told where not all is kept. */
  readonly notKept: readonly Problem[]
}

type AnyRow = {
  readonly decision: { readonly foreign: Foreign }
  readonly cue: Cue | undefined
  readonly outcome: string
}

/**
 * What other lists said as far as a job holds it in all (`JOB_FOREIGN_LIMIT`), what is in the job
 * already counted: first of the list as a whole, then of its decisions in their order. What is past
 * it is left out and told once.
 */
export const keptWithin = <Row extends AnyRow>(
  job: Job,
  reel: Reel,
  whole: Foreign,
  rows: readonly Row[],
): Kept<Row> => {
  let kept = keptNow(job)
  const keeps = (before: Foreign, added: Foreign): boolean => {
    const replaced = added.reduce(
      (sum, { format }) => sum + (foreignOf(before, format)?.length ?? 0),
      0,
    )
    const after = kept - replaced + lengthOf(added)
    if (after > JOB_FOREIGN_LIMIT && after > kept) return false
    kept = after
    return true
  }
  const within = foreignWithin(whole, REEL_FOREIGN_LIMIT)
  const isWholeKept = keeps(reel.foreign, within)
  let left = 0
  const keptRows = rows.map((row): Row => {
    const { decision, cue, outcome } = row
    if (decision.foreign.length === 0 || outcome === 'conflicts' || outcome === 'passed-over')
      return row
    if (keeps(cue?.foreign ?? [], foreignWithin(decision.foreign, CUE_FOREIGN_LIMIT))) return row
    left++
    return { ...row, decision: { ...decision, foreign: [] } }
  })
  const says = `A job keeps at most ${JOB_FOREIGN_LIMIT} characters of other lists; what ${left === 1 ? '1 decision says' : `${left} decisions say`} besides ${left === 1 ? 'its' : 'their'} values is left out.`
  return {
    rows: keptRows,
    foreign: isWholeKept ? within : [],
    notKept: [
      ...(within.length < whole.length || !isWholeKept
        ? [problem('too-large', 'The list says more of itself than a job keeps; that is left out.')]
        : []),
      ...(left > 0 ? [problem('too-large', says)] : []),
    ],
  }
}
