import type { AppStore } from './appStore.ts'
import { endGesture } from './document.ts'
import type { LedgerView } from './ledgerView.ts'

export const setLedger = (store: AppStore, change: Partial<LedgerView>): void =>
  store.setState({ ledger: { ...store.getState().ledger, ...change } })

const SCRUB = 'scrub'

/** Pictures are drawn coarsely while the film is moved by hand. */
export const beginScrub = (store: AppStore): void => {
  endGesture(store)
  store.setState({ gesture: SCRUB })
}

export const endScrub = (store: AppStore): void => {
  if (store.getState().gesture === SCRUB) store.setState({ gesture: undefined })
}
