import { problem } from '../core/base/problem.ts'
import type { Reel } from '../core/job/job.ts'
import type { AppStore } from '../store/appStore.ts'
import { reelOf } from '../store/queries.ts'
import { CallError } from '../work/rpc.ts'

/** Holds work that takes long to the scan it began with: another may be opened meanwhile. */
export type SameScan = {
  /** Throws once the scan of the reel is not the one that is open any more. */
  readonly assert: (reel: Reel) => void
  /** Whether an error says so. */
  readonly isAbandoned: (error: unknown) => boolean
}

/** `what` was being made, such as “The report”. */
export const createSameScan = (store: AppStore, what: string): SameScan => {
  const abandoned = problem(
    'conflict',
    `${what} was not made, as another scan was opened meanwhile; make it again.`,
  )
  return {
    assert: (reel) => {
      const state = store.getState()
      if (state.media !== 'ready' || reelOf(state)?.id !== reel.id)
        throw new CallError(abandoned.says, abandoned)
    },
    isAbandoned: (error) => error instanceof CallError && error.problem === abandoned,
  }
}
