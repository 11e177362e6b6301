import type { CueId } from '../core/job/recordIds.ts'
import type { AppStore } from './appStore.ts'
import { currentCue, jobOf } from './queries.ts'
import type { AppState } from './state.ts'

/** Whether what is under the line is seen: its picture is there, and does not race past. */
const isSeen = ({ media, step, playback }: AppState): boolean =>
  media === 'ready' && step === 'rehearse' && !(playback.isPlaying && Math.abs(playback.speed) > 1)

const note = (store: AppStore): void => {
  const state = store.getState()
  const cue = currentCue(state)
  if (!cue || !isSeen(state) || state.looked.has(cue.id)) return
  store.setState({ looked: new Set(state.looked).add(cue.id) })
}

/** Notes every cue that comes under the line as looked at. Returns how to stop. */
export const noteLooked = (store: AppStore): (() => void) =>
  store.subscribe((state, before) => {
    const isMoved =
      state.playhead !== before.playhead ||
      state.history?.job.cues !== before.history?.job.cues ||
      state.media !== before.media ||
      state.step !== before.step ||
      state.reelId !== before.reelId ||
      state.playback !== before.playback
    if (isMoved) note(store)
  })

/** Adds cues that were looked at before: those of the job on screen count. */
export const recallLooked = (store: AppStore, ids: Iterable<CueId>): void => {
  const state = store.getState()
  const cues = jobOf(state)?.cues
  if (!cues) return
  const known = [...ids].filter((id) => cues[id] !== undefined)
  store.setState({ looked: new Set([...known, ...state.looked]) })
}

/** Those looked at that are still in the job. */
export const lookedInJob = (state: AppState): readonly CueId[] => {
  const cues = jobOf(state)?.cues
  return cues ? [...state.looked].filter((id) => cues[id] !== undefined) : []
}
