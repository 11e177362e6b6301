import { codingOf } from '../core/job/codingOf.ts'
import { framesInReach } from '../core/job/framesInReach.ts'
import type { Still } from '../core/picture/still.ts'
import type { Frame } from '../core/time/frame.ts'
import type { AppStore } from '../store/appStore.ts'
import { cueAtFrame, cuesOf, reelOf } from '../store/queries.ts'
import type { AppState } from '../store/state.ts'
import { isPassAtWork } from '../store/transferring.ts'
import type { Stills } from '../ui/services.ts'
import { createNearBook } from './nearBook.ts'
import { onCodingChange } from './onCodingChange.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

const STILL_WIDTH = 96

/** Stills kept at once; at about 40 kB each this stays under 40 MB however long the reel. */
const KEPT = 1000

/** Stills asked for and not there yet; what was asked for longest ago is let go. */
const MOST_WANTED = 200

/** How long the line must rest before stills around it are made. */
const REST_MS = 300

export type StillDesk = Stills & { readonly forget: () => void }

const mayWork = ({ media, playback }: AppState): boolean => media === 'ready' && !playback.isPlaying

/**
 * Fetches stills: first those the strip asks for, the one last asked for before the others, then
 * those around the line, to look through the reel by. It keeps the most recent and gives way to
 * playing; while a pass is at work it makes only those asked for.
 */
export const createStillDesk = (store: AppStore, workers: Workers): StillDesk => {
  const kept = createNearBook<Still>(KEPT)
  let wanted: Frame[] = []
  let around: readonly Frame[] = []
  /** Frames that could not be read; that was told once. */
  const unreadable = new Set<Frame>()
  const listeners = new Set<() => void>()
  let isBusy = false
  let round = 0
  let rest: ReturnType<typeof setTimeout> | undefined

  const next = (): Frame | undefined => {
    const asked = wanted.pop()
    if (asked !== undefined || isPassAtWork(store.getState().transferring)) return asked
    around = around.filter((at) => kept.get(at) === undefined && !unreadable.has(at))
    return around[0]
  }
  const work = async (): Promise<void> => {
    if (isBusy || !mayWork(store.getState()) || !reelOf(store.getState())) return
    isBusy = true
    const mine = round
    let at = next()
    try {
      for (; at !== undefined; at = next()) {
        const state = store.getState()
        const reel = reelOf(state)
        if (!reel) return
        if (!mayWork(state)) {
          wanted.push(at)
          return
        }
        const height = Math.max(1, Math.round(STILL_WIDTH / reel.media.displayAspect))
        const request = { frame: at, width: STILL_WIDTH, height, coding: codingOf(reel) }
        const still = await workers.stills('still', request)
        if (mine !== round) return
        kept.put(at, still)
        for (const listener of listeners) listener()
      }
    } catch (error) {
      if (mine !== round || store.getState().media !== 'ready') return
      if (at !== undefined) unreadable.add(at)
      if (!isAbort(error)) tellError(store, error)
    } finally {
      isBusy = false
      // What lies around waits for the end of a pass: asking on would only ask itself.
      const isAroundDue = around.length > 0 && !isPassAtWork(store.getState().transferring)
      if (wanted.length > 0 || isAroundDue) void work()
    }
  }
  const lookAround = (): void => {
    const state = store.getState()
    const reel = reelOf(state)
    if (!reel || !mayWork(state)) return
    around = framesInReach(cuesOf(state), reel.frames, state.playhead)
    void work()
  }
  const lookAroundSoon = (): void => {
    clearTimeout(rest)
    around = []
    rest = setTimeout(lookAround, REST_MS)
  }
  const forget = (): void => {
    round++
    kept.clear()
    unreadable.clear()
    wanted = []
    for (const listener of listeners) listener()
    lookAroundSoon()
  }
  onCodingChange(store, forget)
  store.subscribe((state, before) => {
    if (before.playback.isPlaying && !state.playback.isPlaying) void work()
    if (isPassAtWork(before.transferring) && !isPassAtWork(state.transferring)) void work()
    const isMoved =
      state.playhead !== before.playhead ||
      state.media !== before.media ||
      state.playback.isPlaying !== before.playback.isPlaying ||
      (state.history?.job !== before.history?.job && cuesOf(state).length !== cuesOf(before).length)
    if (isMoved) lookAroundSoon()
  })
  return {
    get: kept.get,
    nearest: (frame) => {
      const state = store.getState()
      const cue = cueAtFrame(state, frame)
      const found = kept.nearest(frame, (at) => cueAtFrame(state, at) === cue)
      return found && { frame: found.frame, still: found.value }
    },
    request: (frame) => {
      if (kept.get(frame) !== undefined || unreadable.has(frame) || wanted.includes(frame)) return
      wanted.push(frame)
      if (wanted.length > MOST_WANTED) wanted.shift()
      void work()
    },
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    forget,
  }
}
