import { dropHeld } from '../core/job/commands/dropHeld.ts'
import { holdFrame } from '../core/job/commands/holdFrame.ts'
import { renameHeld } from '../core/job/commands/renameHeld.ts'
import type { HeldFrame } from '../core/job/job.ts'
import { type HeldId, newHeldId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { perform } from './document.ts'
import { tell } from './notices.ts'
import { currentCue, jobOf } from './queries.ts'
import { setView } from './session.ts'
import type { AppState } from './state.ts'
import type { Against, Arrangement } from './view.ts'

/** Puts pictures so, or the graded one alone again where they are so already. */
export const toggleArrangement = (store: AppStore, arrangement: Arrangement): void =>
  setView(store, {
    arrangement: store.getState().view.arrangement === arrangement ? 'alone' : arrangement,
  })

/** Compares with this from now on; where the graded picture stood alone, by a wipe. */
export const compareWith = (store: AppStore, against: Against): void => {
  const { arrangement } = store.getState().view
  setView(store, { against, arrangement: arrangement === 'alone' ? 'wipe' : arrangement })
}

/** Held frames of the reel on screen in the order of their frames. */
export const heldOfReel = (state: AppState): readonly HeldFrame[] =>
  Object.values<HeldFrame>(jobOf(state)?.held ?? {})
    .filter(({ reel }) => reel === state.reelId)
    .sort((a, b) => a.frame - b.frame)

/** Everything that the cue under the line can be compared with, in a fixed order. */
export const comparable = (state: AppState): readonly Against[] => {
  const alternates = currentCue(state)?.alternates ?? []
  return [
    { kind: 'scanned' },
    ...(alternates.length > 0 ? [{ kind: 'alternates' } as const] : []),
    ...alternates.map((_, index) => ({ kind: 'alternate', index }) as const),
    ...heldOfReel(state).map(({ id }) => ({ kind: 'held', id }) as const),
    ...state.view.stills.map(({ id }) => ({ kind: 'held', id }) as const),
  ]
}

export const sameAgainst = (a: Against, b: Against): boolean =>
  a.kind === b.kind &&
  (a.kind !== 'held' || a.id === (b as typeof a).id) &&
  (a.kind !== 'alternate' || a.index === (b as typeof a).index)

/** Goes to the next thing to compare with, round from the last to the first. */
export const compareWithNext = (store: AppStore): void => {
  const state = store.getState()
  const all = comparable(state)
  const index = all.findIndex((one) => sameAgainst(one, state.view.against))
  const next = all[(index + 1) % all.length]
  if (next) compareWith(store, next)
}

/** Holds the frame under the line as a reference, to compare with from now on. */
export const holdHere = (store: AppStore): void => {
  const { reelId, playhead } = store.getState()
  if (reelId === undefined) return
  const id = newHeldId()
  if (!perform(store, (job) => holdFrame(job, reelId, playhead, id))) return
  setView(store, { against: { kind: 'held', id } })
  tell(store, `Held ${jobOf(store.getState())?.held[id]?.name}: compare with it by wipe or beside.`)
}

export const renameHeldFrame = (store: AppStore, id: HeldId, name: string): boolean =>
  perform(store, (job) => renameHeld(job, id, name))

const leaveAgainst = (store: AppStore, id: HeldId): void => {
  const { against } = store.getState().view
  if (against.kind === 'held' && against.id === id) setView(store, { against: { kind: 'scanned' } })
}

export const dropHeldFrame = (store: AppStore, id: HeldId): void => {
  if (perform(store, (job) => dropHeld(job, id))) leaveAgainst(store, id)
}

/** Adds a still to what can be compared with in this session, and compares with it. */
export const addStill = (store: AppStore, id: HeldId, name: string): void => {
  setView(store, { stills: [...store.getState().view.stills, { id, name }] })
  compareWith(store, { kind: 'held', id })
}

export const dropStill = (store: AppStore, id: HeldId): void => {
  setView(store, { stills: store.getState().view.stills.filter((still) => still.id !== id) })
  leaveAgainst(store, id)
}
