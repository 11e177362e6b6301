import type { Problem } from '../core/base/problem.ts'
import type { AppStore } from '../store/appStore.ts'
import { tellProblems } from '../store/notices.ts'
import { CallError } from '../work/rpc.ts'

const isProblem = (value: unknown): value is Problem =>
  typeof value === 'object' && value !== null && 'says' in value && 'code' in value

export const isAbort = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError'

/** Turns whatever was thrown into one sentence on screen. A cancelled call says nothing. */
export const tellError = (store: AppStore, error: unknown): void => {
  if (isAbort(error)) return
  if (error instanceof CallError && isProblem(error.problem)) {
    tellProblems(store, [error.problem])
    return
  }
  const says = error instanceof Error ? error.message : String(error)
  tellProblems(store, [{ code: 'cannot-read', says }])
}
