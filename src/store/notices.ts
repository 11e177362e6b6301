import type { Problem } from '../core/base/problem.ts'
import type { AppStore } from './appStore.ts'
import { sentenceOf } from './state.ts'

let nextId = 1

export const tell = (store: AppStore, says: string): void =>
  store.setState({ notice: { id: nextId++, says, isProblem: false } })

export const tellProblems = (store: AppStore, problems: readonly Problem[]): void =>
  store.setState({ notice: { id: nextId++, says: sentenceOf(problems), isProblem: true } })

export const putNoticeAway = (store: AppStore): void => store.setState({ notice: undefined })
