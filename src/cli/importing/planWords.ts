import type { ImportPlan, ImportRow } from '../../core/conform/importPlan.ts'
import { cueNumber, cuesOfReel } from '../../core/job/cueList.ts'
import type { Job, Reel } from '../../core/job/job.ts'
import { formatTimecode } from '../../core/time/timecode.ts'
import { problemText } from '../terminal.ts'

const OUTCOMES = {
  matches: 'matches',
  moves: 'moves',
  begins: 'begins',
  conflicts: 'CONFLICTS',
  'passed-over': 'passed over',
} as const

/** What the decision changes of its cue; nothing to be said where none is taken. */
const changesText = ({ outcome, changes }: ImportRow): string => {
  if (outcome === 'conflicts' || outcome === 'passed-over') return ''
  return changes.length === 0 ? '(changes nothing)' : `(${changes.join(', ')})`
}

const rowLine = (row: ImportRow, job: Job, reel: Reel): string => {
  const label = (frame: number) =>
    formatTimecode(reel.startCount + frame, reel.rate, reel.isDropFrame)
  const { cue, first, decision } = row
  const number = cue && cueNumber(cuesOfReel(job, reel.id), cue)
  const places = [
    cue && row.outcome === 'moves' ? `${label(cue.first)} →` : '',
    first === undefined ? '' : label(first),
  ]
  return [
    `${row.number}`,
    OUTCOMES[row.outcome],
    number === undefined ? 'new cue' : `cue ${number}`,
    places.filter((place) => place !== '').join(' '),
    decision.name || decision.source,
    changesText(row),
    row.says,
  ]
    .filter((part) => part !== '')
    .join('  ')
}

/** A plan as lines: every decision, the cues no decision is about, and what is not taken. */
export const planLines = (plan: ImportPlan, job: Job, reel: Reel): readonly string[] => {
  const count = (outcome: ImportRow['outcome']): number =>
    plan.rows.filter((row) => row.outcome === outcome).length
  const counts = (Object.keys(OUTCOMES) as ImportRow['outcome'][])
    .map((outcome) => ({ outcome, many: count(outcome) }))
    .filter(({ many }) => many > 0)
    .map(({ outcome, many }) => `${many} ${OUTCOMES[outcome].toLowerCase()}`)
  return [
    ...plan.rows.map((row) => rowLine(row, job, reel)),
    `${plan.rows.length} ${plan.rows.length === 1 ? 'decision' : 'decisions'} by ${plan.options.matchBy}: ${counts.join(', ') || 'none'}.`,
    ...(plan.untouched.length > 0 ? [`Cues left as they are: ${plan.untouched.join(', ')}.`] : []),
    ...plan.notTaken.map((each) => `Not taken: ${problemText(each)}`),
  ]
}

/** The same as data. */
export const planRecord = (plan: ImportPlan, job: Job, reel: Reel): unknown => {
  const cues = cuesOfReel(job, reel.id)
  return {
    options: plan.options,
    rows: plan.rows.map(({ number, decision, outcome, cue, first, changes, says }) => ({
      decision: number,
      name: decision.name,
      source: decision.source,
      line: decision.line,
      outcome,
      cue: cue && cueNumber(cues, cue),
      from: cue?.first,
      first,
      grade: decision.values.grade,
      changes,
      says,
    })),
    untouched: plan.untouched,
    notTaken: plan.notTaken,
  }
}
