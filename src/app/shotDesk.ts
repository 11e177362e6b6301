import { placeCues } from '../core/job/commands/placeCues.ts'
import { isDoubtful } from '../core/job/isDoubtful.ts'
import { newCueId } from '../core/job/recordIds.ts'
import type { Boundary } from '../core/shots/boundary.ts'
import { cuePlacements } from '../core/shots/cuesFromBoundaries.ts'
import type { AppStore } from '../store/appStore.ts'
import { endGesture, perform } from '../store/document.ts'
import { tell } from '../store/notices.ts'
import { cuesOf, reelOf } from '../store/queries.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

export type ShotDesk = { readonly findShots: () => Promise<void>; readonly stop: () => void }

/** A fade out may turn out to be the first half of a change: it waits for what follows. */
const settled = (boundaries: readonly Boundary[]): readonly Boundary[] =>
  boundaries.at(-1)?.kind === 'fade-out' ? boundaries.slice(0, -1) : boundaries

/** Finds the shots of the reel on screen; cues appear as they are found, in one undo step. */
export const createShotDesk = (store: AppStore, workers: Workers): ShotDesk => {
  let running: AbortController | undefined

  const findShots = async (): Promise<void> => {
    const reel = reelOf(store.getState())
    if (!reel || running) return
    const stop = new AbortController()
    running = stop
    const gesture = `find shots ${performance.now()}`
    const found: Boundary[] = []
    let lastPlaced = 0
    const place = (boundaries: readonly Boundary[]): void => {
      const fresh = cuePlacements(boundaries, reel.frames).filter(({ first }) => first > lastPlaced)
      const last = fresh.at(-1)
      if (!last) return
      lastPlaced = last.first
      const places = fresh.map(({ first, ramp, kind, confidence }) => ({
        first,
        ramp,
        boundary: { kind, confidence },
      }))
      perform(store, (job) => placeCues(job, reel.id, places, newCueId), gesture)
    }
    const total = reel.frames
    store.setState({ finding: { done: 0, total, framesPerSecond: 0, secondsLeft: undefined } })
    try {
      await workers.passes('findShots', undefined, {
        signal: stop.signal,
        onProgress: ({ pace, boundaries }) => {
          store.setState({ finding: pace })
          if (boundaries.length === 0) return
          found.push(...boundaries)
          place(settled(found))
        },
      })
      place(found)
      const cues = cuesOf(store.getState())
      const doubtful = cues.filter(isDoubtful).length
      const shots = `${cues.length} ${cues.length === 1 ? 'cue' : 'cues'}`
      tell(store, doubtful > 0 ? `${shots}; ${doubtful} to look at: press D` : `${shots} found.`)
    } catch (error) {
      if (isAbort(error))
        tell(store, 'Stopped. The cues found so far are kept; undo takes them away.')
      else tellError(store, error)
    } finally {
      running = undefined
      store.setState({ finding: undefined })
      endGesture(store)
    }
  }
  return { findShots, stop: () => running?.abort() }
}
