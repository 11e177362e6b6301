import { applyImport } from '../core/conform/applyImport.ts'
import type {
  ImportOptions,
  ImportOutcome,
  ImportPlan,
  ImportRow,
} from '../core/conform/importPlan.ts'
import { planImport } from '../core/conform/planImport.ts'
import { suggestImport } from '../core/conform/suggestImport.ts'
import type { DecisionList } from '../core/formats/decisionList.ts'
import type { Job } from '../core/job/job.ts'
import { newCueId, type ReelId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { endGesture, perform } from './document.ts'
import { putNoticeAway, tell } from './notices.ts'
import { jobOf } from './queries.ts'
import type { AppState } from './state.ts'

/** Which rows of an import are listed. */
export type RowFilter = ImportOutcome | 'all'

/** A list made elsewhere, read and laid over the job to be looked at; nothing is changed yet. */
export type Importing = {
  /** The name of its file. */
  readonly name: string
  readonly list: DecisionList
  readonly options: ImportOptions
  readonly filter: RowFilter
  /** Why what is written as the place it begins on is none; undefined where it is one. */
  readonly startRefusal: string | undefined
}

/** Every outcome in the order in which it is told, what needs a person last. */
export const IMPORT_OUTCOMES: readonly ImportOutcome[] = [
  'matches',
  'moves',
  'begins',
  'passed-over',
  'conflicts',
]

/** Lays a list over the job, with what a person would most likely choose. */
export const offerImport = (store: AppStore, name: string, list: DecisionList): void => {
  const state = store.getState()
  const job = jobOf(state)
  const { reelId } = state
  if (!job || reelId === undefined) return
  endGesture(store)
  putNoticeAway(store)
  const options = suggestImport(job, reelId, list)
  store.setState({ importing: { name, list, options, filter: 'all', startRefusal: undefined } })
}

/** Changes how the list is taken; rows are listed all again, as another kind may be gone. */
export const changeImport = (store: AppStore, change: Partial<ImportOptions>): void => {
  const { importing } = store.getState()
  if (!importing) return
  const options = { ...importing.options, ...change }
  const startRefusal = 'startsAt' in change ? undefined : importing.startRefusal
  store.setState({ importing: { ...importing, options, startRefusal, filter: 'all' } })
}

/** What is written as the place it begins on is none: nothing is imported until it is one. */
export const refuseStart = (store: AppStore, startRefusal: string): void => {
  const { importing } = store.getState()
  if (importing) store.setState({ importing: { ...importing, startRefusal } })
}

export const filterImport = (store: AppStore, filter: RowFilter): void => {
  const { importing } = store.getState()
  if (importing) store.setState({ importing: { ...importing, filter } })
}

/** Puts the list away and changes nothing. */
export const leaveImport = (store: AppStore): void => store.setState({ importing: undefined })

type Planned = {
  readonly job: Job
  readonly reelId: ReelId
  readonly options: ImportOptions
  readonly plan: ImportPlan
}

const planned = new WeakMap<DecisionList, Planned>()

/** What the import would do as it is chosen now; undefined where none is open. */
export const importPlanOf = (state: AppState): ImportPlan | undefined => {
  const { importing, reelId } = state
  const job = jobOf(state)
  if (!importing || !job || reelId === undefined) return undefined
  const { list, options } = importing
  const known = planned.get(list)
  if (known?.job === job && known.reelId === reelId && known.options === options) return known.plan
  const plan = planImport(job, reelId, list, options)
  planned.set(list, { job, reelId, options, plan })
  return plan
}

/** How many rows have each outcome. */
export const outcomeCounts = (plan: ImportPlan): Readonly<Record<ImportOutcome, number>> => {
  const counts = { matches: 0, moves: 0, begins: 0, conflicts: 0, 'passed-over': 0 }
  for (const { outcome } of plan.rows) counts[outcome]++
  return counts
}

/** The rows that are listed. */
export const listedRows = (plan: ImportPlan, filter: RowFilter): readonly ImportRow[] =>
  filter === 'all' ? plan.rows : plan.rows.filter(({ outcome }) => outcome === filter)

const counted = (count: number, one: string, many: string): string =>
  `${count} ${count === 1 ? one : many}`

/** What was done, in a sentence. */
const doneText = (name: string, plan: ImportPlan): string => {
  const counts = outcomeCounts(plan)
  const parts = [
    ...(counts.begins > 0 ? [`${counted(counts.begins, 'cue', 'cues')} begun`] : []),
    ...(counts.moves > 0 ? [`${counts.moves} moved`] : []),
    ...(counts.matches > 0 ? [`${counts.matches} matched`] : []),
  ]
  const left = counts.conflicts + counts['passed-over']
  return `Imported ${name}: ${parts.join(', ')}${left > 0 ? `; ${counted(left, 'decision', 'decisions')} left out` : ''}. Undo takes it back.`
}

/** Does what is shown, as one step of the history, and puts the list away. Returns whether it was done. */
export const importList = (store: AppStore): boolean => {
  const state = store.getState()
  const { importing, reelId } = state
  const plan = importPlanOf(state)
  if (!importing || !plan || reelId === undefined) return false
  if (importing.startRefusal !== undefined) return false
  const before = state.history
  if (!perform(store, (job) => applyImport(job, reelId, plan, newCueId))) return false
  leaveImport(store)
  const hasChanged = store.getState().history !== before
  tell(
    store,
    hasChanged
      ? doneText(importing.name, plan)
      : `${importing.name} changes nothing: the job has all of it already.`,
  )
  return true
}
