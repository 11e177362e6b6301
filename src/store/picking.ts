import type { AppStore } from './appStore.ts'
import type { PointingMode, ScanPoint } from './pointing.ts'

/** Places that can be picked for a thing. */
export const MOST_PICKS: Readonly<Record<PointingMode, number>> = { read: 0, neutral: 3, dye: 5 }

/** Picks one place more, or, where there are as many as can be, this in place of the first. */
export const pickPlace = (store: AppStore, place: ScanPoint): void => {
  const { pointing } = store.getState()
  const most = MOST_PICKS[pointing.mode]
  if (most === 0) return
  const picks = [...pointing.picks, place].slice(-most)
  store.setState({ pointing: { ...pointing, picks } })
}

/** Picks the place that is read, which can be moved by key. */
export const pickReading = (store: AppStore): void => {
  const { reading } = store.getState().pointing
  if (reading) pickPlace(store, { ...reading })
}

/** Takes back the place picked last. */
export const unpickLast = (store: AppStore): void => {
  const { pointing } = store.getState()
  store.setState({ pointing: { ...pointing, picks: pointing.picks.slice(0, -1) } })
}
