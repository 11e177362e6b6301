import type { Problem } from '../core/base/problem.ts'
import type { AppStore } from './appStore.ts'
import type { Notice } from './state.ts'

let nextId = 1

/** Sentences shown of several; the rest are counted. */
const SHOWN = 5

/** Problems as they are told: a sentence a line, and after the first few how many more there are. */
export const sentencesOf = (problems: readonly Problem[]): string => {
  const left = problems.length - SHOWN
  const shown = problems.slice(0, SHOWN).map(({ says }) => says)
  return [...shown, ...(left > 0 ? [`and ${left} more`] : [])].join('\n')
}

const show = (store: AppStore, notice: Omit<Notice, 'id'>): void =>
  store.setState({ notice: { ...notice, id: nextId++ } })

export const tell = (store: AppStore, says: string): void =>
  show(store, { says, isProblem: false, isRefusal: false })

/** What was done, and what of it needs to be looked at: it stays until it is put away. */
export const tellWith = (store: AppStore, done: string, left: readonly Problem[]): void => {
  if (left.length === 0) tell(store, done)
  else show(store, { says: `${done}\n${sentencesOf(left)}`, isProblem: true, isRefusal: false })
}

export const tellProblems = (store: AppStore, problems: readonly Problem[]): void =>
  show(store, { says: sentencesOf(problems), isProblem: true, isRefusal: false })

/** Why a change was not made. The same reason again, as in a drag, is not told anew. */
export const tellRefusal = (store: AppStore, problems: readonly Problem[]): void => {
  const says = sentencesOf(problems)
  if (store.getState().notice?.says === says) return
  show(store, { says, isProblem: true, isRefusal: true })
}

export const putNoticeAway = (store: AppStore): void => store.setState({ notice: undefined })

/** Once a change is done, why an earlier one was refused is of no more use. */
export const putRefusalAway = (store: AppStore): void => {
  if (store.getState().notice?.isRefusal) putNoticeAway(store)
}
