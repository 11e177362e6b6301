import { type CensusData, censusBuffers } from '../core/census/censusData.ts'
import { censusStanding, pixelDelivery } from '../core/census/censusStanding.ts'
import { type CensusReader, createCensusReader } from '../core/census/censusVerdict.ts'
import type { CueLook } from '../core/census/cueLook.ts'
import type { Cue } from '../core/job/job.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { AppStore } from '../store/appStore.ts'
import { censusKeyOf } from '../store/checkKey.ts'
import { withLook } from '../store/lookBook.ts'
import { shownGrade } from '../store/proposal.ts'
import { cueIndex, cuesOf, currentCue, jobOf, profileOf } from '../store/queries.ts'
import { editedCues } from '../store/selection.ts'
import type { AppState, LiveVerdict } from '../store/state.ts'

/** What the censuses of a job may take; the ones longest unused go first. */
const MOST_BYTES = 256 * 2 ** 20

/** Cues whose verdicts follow a change of all that are selected. */
const MOST_LIVE = 12

type Held = {
  readonly census: CensusData | undefined
  readonly reader: CensusReader | undefined
  readonly bytes: number
}

export type CensusDesk = {
  /** Whether a cue's colours are to be kept: they are not known, and there is room or need. */
  readonly isWanted: (state: AppState, cue: Cue) => boolean
  readonly keep: (key: string, census: CensusData | undefined) => void
  readonly keepLook: (key: string, look: CueLook) => void
  /** The colours that were kept for a key; undefined where they are not, or not any more. */
  readonly get: (key: string) => CensusData | undefined
  /**
   * The same, waiting for colours that are still to be counted; undefined of a cue that has none of
   * its own, all of it being ramp.
   */
  readonly whenKept: (key: string, signal: AbortSignal) => Promise<CensusData | undefined>
}

/**
 * Keeps cues' censuses, and the live verdicts of the cues in hand at every change. Where the kernel
 * cannot run here the reference reads the censuses: the same verdicts, later.
 */
export const createCensusDesk = (
  store: AppStore,
  loadKernel: () => Promise<Kernel>,
): CensusDesk => {
  const held = new Map<string, Held>()
  const waiting = new Set<(key: string) => void>()
  let bytes = 0
  let readerOf: (census: CensusData) => CensusReader = createCensusReader
  loadKernel().then(
    (kernel) => {
      readerOf = kernel.censusReader
    },
    () => undefined,
  )

  const use = (key: string): Held | undefined => {
    const found = held.get(key)
    if (!found) return undefined
    held.delete(key)
    held.set(key, found)
    return found
  }
  const liveVerdict = (state: AppState, cue: Cue): LiveVerdict | undefined => {
    const job = jobOf(state)
    const key = censusKeyOf(state, cue)
    const reader = key === undefined ? undefined : use(key)?.reader
    const grade = shownGrade(state, cue)
    if (!job || key === undefined || !reader) return undefined
    const profile = profileOf(job)
    const before = state.live.get(cue.id)
    if (before?.grade === grade && before.profile === profile && before.colours === key)
      return before
    const verdict = reader(grade, profile)
    const isRamped = cue.ramp > 0 && cueIndex(cuesOf(state), cue) > 0
    const standing = censusStanding(verdict, profile, pixelDelivery(cue.framing, isRamped))
    return { grade, profile, colours: key, verdict, standing }
  }
  const follow = (): void => {
    const state = store.getState()
    const job = jobOf(state)
    const current = currentCue(state)
    const ids = new Set(
      [...(current ? [current.id] : []), ...editedCues(store)].slice(0, MOST_LIVE),
    )
    const live = new Map(
      [...ids].flatMap((id) => {
        const cue = job?.cues[id]
        const told = cue && liveVerdict(state, cue)
        return told ? [[id, told] as const] : []
      }),
    )
    const isSame =
      live.size === state.live.size && [...live].every(([id, told]) => state.live.get(id) === told)
    if (!isSame) store.setState({ live })
  }
  store.subscribe((state, before) => {
    if (
      state.history !== before.history ||
      state.playhead !== before.playhead ||
      state.selection !== before.selection ||
      state.proposal !== before.proposal ||
      state.reelId !== before.reelId
    )
      follow()
  })
  return {
    isWanted: (state, cue) => {
      const key = censusKeyOf(state, cue)
      if (key === undefined || held.has(key)) return false
      return currentCue(state)?.id === cue.id || bytes < MOST_BYTES / 2
    },
    keep: (key, census) => {
      const size = census
        ? censusBuffers(census).reduce((sum, buffer) => sum + buffer.byteLength, 0)
        : 0
      bytes -= held.get(key)?.bytes ?? 0
      held.delete(key)
      held.set(key, { census, reader: census && readerOf(census), bytes: size })
      bytes += size
      for (const [oldest, { bytes: freed }] of held) {
        if (bytes <= MOST_BYTES || oldest === key) break
        held.delete(oldest)
        bytes -= freed
      }
      store.setState({ live: new Map() })
      follow()
      for (const tell of [...waiting]) tell(key)
    },
    keepLook: (key, look) => store.setState(({ looks }) => ({ looks: withLook(looks, key, look) })),
    get: (key) => use(key)?.census,
    whenKept: (key, signal) => {
      const found = use(key)
      if (found) return Promise.resolve(found.census)
      return new Promise((resolve, reject) => {
        const end = () => {
          waiting.delete(tell)
          signal.removeEventListener('abort', stop)
        }
        const stop = () => {
          end()
          reject(signal.reason)
        }
        const tell = (kept: string) => {
          if (kept !== key) return
          end()
          resolve(held.get(key)?.census)
        }
        waiting.add(tell)
        signal.addEventListener('abort', stop)
        if (signal.aborted) stop()
      })
    },
  }
}
