import type { Problem } from '../core/base/problem.ts'
import type { AppStore } from './appStore.ts'
import { type Notice, sentenceOf } from './state.ts'

let nextId = 1

const show = (store: AppStore, notice: Omit<Notice, 'id'>): void =>
  store.setState({ notice: { ...notice, id: nextId++ } })

export const tell = (store: AppStore, says: string): void =>
  show(store, { says, isProblem: false, isRefusal: false })

export const tellProblems = (store: AppStore, problems: readonly Problem[]): void =>
  show(store, { says: sentenceOf(problems), isProblem: true, isRefusal: false })

/** Why a change was not made. The same reason again, as in a drag, is not told anew. */
export const tellRefusal = (store: AppStore, problems: readonly Problem[]): void => {
  const says = sentenceOf(problems)
  if (store.getState().notice?.says === says) return
  show(store, { says, isProblem: true, isRefusal: true })
}

export const putNoticeAway = (store: AppStore): void => store.setState({ notice: undefined })

/** Once a change is done, why an earlier one was refused is of no more use. */
export const putRefusalAway = (store: AppStore): void => {
  if (store.getState().notice?.isRefusal) putNoticeAway(store)
}
