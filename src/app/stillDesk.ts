import { codingOf } from '../core/job/codingOf.ts'
import type { Still } from '../core/picture/still.ts'
import type { Frame } from '../core/time/frame.ts'
import type { AppStore } from '../store/appStore.ts'
import { reelOf } from '../store/queries.ts'
import type { Stills } from '../ui/services.ts'
import { onCodingChange } from './onCodingChange.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

const STILL_WIDTH = 96

/** Stills kept at once; at about 40 kB each this stays under 40 MB however long the reel. */
const KEPT = 1000

export type StillDesk = Stills & { readonly forget: () => void }

/**
 * Fetches stills for the strip, the one last asked for first, and keeps the most recent. It gives
 * way to playing.
 */
export const createStillDesk = (store: AppStore, workers: Workers): StillDesk => {
  const kept = new Map<Frame, Still>()
  const wanted: Frame[] = []
  const listeners = new Set<() => void>()
  let isBusy = false
  let round = 0

  const work = async (): Promise<void> => {
    const { media, playback } = store.getState()
    if (isBusy || media !== 'ready' || playback.isPlaying) return
    isBusy = true
    const mine = round
    try {
      for (let next = wanted.pop(); next !== undefined; next = wanted.pop()) {
        const state = store.getState()
        const reel = reelOf(state)
        if (!reel) return
        if (state.playback.isPlaying) {
          wanted.push(next)
          return
        }
        const height = Math.max(1, Math.round(STILL_WIDTH / reel.media.displayAspect))
        const request = { frame: next, width: STILL_WIDTH, height, coding: codingOf(reel) }
        const still = await workers.stills('still', request)
        if (mine !== round) return
        kept.set(next, still)
        const oldest = kept.keys().next().value
        if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest)
        for (const listener of listeners) listener()
      }
    } catch (error) {
      if (!isAbort(error)) tellError(store, error)
    } finally {
      isBusy = false
      if (wanted.length > 0 && !store.getState().playback.isPlaying) void work()
    }
  }
  const forget = (): void => {
    round++
    kept.clear()
    wanted.length = 0
    for (const listener of listeners) listener()
  }
  onCodingChange(store, forget)
  store.subscribe((state, before) => {
    if (before.playback.isPlaying && !state.playback.isPlaying) void work()
  })
  return {
    get: (frame) => kept.get(frame),
    request: (frame) => {
      if (kept.has(frame) || wanted.includes(frame)) return
      wanted.push(frame)
      void work()
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    forget,
  }
}
