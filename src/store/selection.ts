import type { Cue } from '../core/job/job.ts'
import type { CueId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { cueIndex, cuesOf, currentCue, jobOf } from './queries.ts'
import type { AppState } from './state.ts'

/** How a click or a key adds to what is selected. */
export type SelectMode = 'only' | 'toggle' | 'range'

const members = new WeakMap<readonly CueId[], ReadonlySet<CueId>>()

/** Whether a cue is selected; of many, told as fast as of one. */
export const isSelected = ({ selection }: AppState, id: CueId): boolean => {
  const known = members.get(selection) ?? new Set(selection)
  members.set(selection, known)
  return known.has(id)
}

const idsBetween = (cues: readonly Cue[], a: Cue, b: Cue): CueId[] => {
  const from = cueIndex(cues, a)
  const to = cueIndex(cues, b)
  return cues.slice(Math.min(from, to), Math.max(from, to) + 1).map((cue) => cue.id)
}

export const selectCue = (store: AppStore, cue: Cue, mode: SelectMode): void => {
  const state = store.getState()
  const anchor = state.anchor === undefined ? undefined : jobOf(state)?.cues[state.anchor]
  if (mode === 'range' && anchor) {
    store.setState({ selection: idsBetween(cuesOf(state), anchor, cue) })
    return
  }
  if (mode === 'toggle') {
    const isIn = isSelected(state, cue.id)
    const selection = isIn
      ? state.selection.filter((id) => id !== cue.id)
      : [...state.selection, cue.id]
    store.setState({ selection, anchor: cue.id })
    return
  }
  store.setState({ selection: [cue.id], anchor: cue.id })
}

export const selectAll = (store: AppStore): void => {
  const cues = cuesOf(store.getState())
  store.setState({ selection: cues.map((cue) => cue.id), anchor: cues[0]?.id })
}

/** Selects every cue with the scene mark of the one under the line, which carries one. */
export const selectScene = (store: AppStore): void => {
  const state = store.getState()
  const scene = currentCue(state)?.scene
  if (!scene) return
  const cues = cuesOf(state).filter((cue) => cue.scene === scene)
  store.setState({ selection: cues.map((cue) => cue.id), anchor: currentCue(state)?.id })
}

/** Leaves out of the selection what is no longer in the job, and never leaves it empty. */
export const pruneSelection = (store: AppStore): void => {
  const state = store.getState()
  const cues = jobOf(state)?.cues
  if (!cues) return
  const selection = state.selection.filter((id) => cues[id] !== undefined)
  if (selection.length !== state.selection.length) store.setState({ selection })
  followPlayhead(store)
}

/** Selects the cue under the line, unless it is part of what is selected already. */
export const followPlayhead = (store: AppStore): void => {
  const state = store.getState()
  const cue = currentCue(state)
  if (cue && !isSelected(state, cue.id)) selectCue(store, cue, 'only')
}

/** The cue and those selected with it that a change was begun on. */
export type Aim = { readonly cue: CueId; readonly ids: readonly CueId[] }

const aims = new WeakMap<AppStore, Aim>()

/** What a change that begins now is aimed at: to be held while it is typed. */
export const takeAim = (store: AppStore): Aim | undefined => {
  const cue = editedCue(store)
  return cue && { cue: cue.id, ids: editedCues(store) }
}

/** Does a change to what it was begun on, wherever the line has gone since. */
export const aimedAt = (store: AppStore, aim: Aim | undefined, change: () => void): void => {
  if (aim) aims.set(store, aim)
  try {
    change()
  } finally {
    aims.delete(store)
  }
}

/** The cue whose values controls show and change: the one under the line. */
export const editedCue = (store: AppStore): Cue | undefined => {
  const state = store.getState()
  const aim = aims.get(store)
  return aim ? jobOf(state)?.cues[aim.cue] : currentCue(state)
}

/** The cues a change on the bench goes to: the selection when the line is in it. */
export const editedCues = (store: AppStore): readonly CueId[] => {
  const aim = aims.get(store)
  if (aim) return aim.ids
  const state = store.getState()
  const cue = currentCue(state)
  if (!cue) return []
  return isSelected(state, cue.id) ? state.selection : [cue.id]
}
