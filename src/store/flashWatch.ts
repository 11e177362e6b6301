import type { FlashReport } from '../core/flashes/flashReport.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import type { AppStore } from './appStore.ts'
import { cuesOf, reelOf } from './queries.ts'
import type { AppState, Progress } from './state.ts'

/** The check of the whole reel for flashes: how far it is, and what it found of which values. */
export type FlashWatch = {
  readonly progress: Progress | undefined
  readonly found:
    | { readonly report: FlashReport; readonly cues: readonly Cue[]; readonly reel: Reel }
    | undefined
}

export const INITIAL_FLASH_WATCH: FlashWatch = { progress: undefined, found: undefined }

export const setFlashWatch = (store: AppStore, change: Partial<FlashWatch>): void =>
  store.setState({ flashWatch: { ...store.getState().flashWatch, ...change } })

/** Whether the cues or the reel have changed since the reel was watched. */
export const isFlashWatchStale = (state: AppState): boolean => {
  const { found } = state.flashWatch
  return found !== undefined && (found.cues !== cuesOf(state) || found.reel !== reelOf(state))
}
