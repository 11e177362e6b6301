import { type Frame, frame } from '../core/time/frame.ts'
import type { AppStore } from './appStore.ts'
import { reelOf } from './queries.ts'
import { followPlayhead } from './selection.ts'
import type { Opened, Playback, Sheet, Step } from './state.ts'
import type { View } from './view.ts'

/** Puts the line on a frame, kept inside the reel. Returns where it went. */
export const movePlayhead = (store: AppStore, wanted: number): Frame => {
  const state = store.getState()
  const last = Math.max(0, (reelOf(state)?.frames ?? 1) - 1)
  const playhead = frame(Math.min(last, Math.max(0, Math.round(wanted))))
  if (playhead !== state.playhead) {
    store.setState({ playhead })
    followPlayhead(store)
  }
  return playhead
}

export const setView = (store: AppStore, view: Partial<View>): void =>
  store.setState({ view: { ...store.getState().view, ...view } })

export const setPlayback = (store: AppStore, playback: Partial<Playback>): void =>
  store.setState({ playback: { ...store.getState().playback, ...playback } })

export const setSheet = (store: AppStore, sheet: Sheet): void => store.setState({ sheet })

export const setStep = (store: AppStore, step: Step): void => store.setState({ step })

/** Opens a dialog or a field over the bench; undefined closes it. */
export const setOpened = (store: AppStore, opened: Opened | undefined): void =>
  store.setState({ opened })
