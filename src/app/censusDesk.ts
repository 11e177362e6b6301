import { type CensusData, censusBuffers } from '../core/census/censusData.ts'
import { censusStanding } from '../core/census/censusStanding.ts'
import { type CensusReader, createCensusReader } from '../core/census/censusVerdict.ts'
import type { Cue } from '../core/job/job.ts'
import { IDENTITY_FRAMING, sameFraming } from '../core/picture/framing.ts'
import type { Kernel } from '../kernel/kernel.ts'
import type { AppStore } from '../store/appStore.ts'
import { censusKeyOf } from '../store/checkKey.ts'
import { cueIndex, cuesOf, currentCue, jobOf, profileOf } from '../store/queries.ts'
import { editedCues } from '../store/selection.ts'
import type { AppState, LiveVerdict } from '../store/state.ts'

/** What the censuses of a job may take; the ones longest unused go first. */
const MOST_BYTES = 256 * 2 ** 20

/** Cues whose verdicts follow a change of all that are selected. */
const MOST_LIVE = 12

type Held = { readonly reader: CensusReader | undefined; readonly bytes: number }

export type CensusDesk = {
  /** Whether a cue's colours are to be counted: they are not known, and there is room or need. */
  readonly isWanted: (state: AppState, cue: Cue) => boolean
  readonly keep: (key: string, census: CensusData | undefined) => void
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
  let bytes = 0
  let readerOf: (census: CensusData) => CensusReader = createCensusReader
  loadKernel().then(
    (kernel) => {
      readerOf = kernel.censusReader
    },
    () => undefined,
  )

  const use = (key: string): CensusReader | undefined => {
    const found = held.get(key)
    if (!found) return undefined
    held.delete(key)
    held.set(key, found)
    return found.reader
  }
  const liveVerdict = (state: AppState, cue: Cue): LiveVerdict | undefined => {
    const job = jobOf(state)
    const key = censusKeyOf(state, cue)
    const reader = key === undefined ? undefined : use(key)
    if (!job || key === undefined || !reader) return undefined
    const profile = profileOf(job)
    const before = state.live.get(cue.id)
    if (before?.grade === cue.grade && before.profile === profile && before.colours === key)
      return before
    const verdict = reader(cue.grade, profile)
    const isRamped = cue.ramp > 0 && cueIndex(cuesOf(state), cue) > 0
    const isWhole = !isRamped && sameFraming(cue.framing, IDENTITY_FRAMING)
    const settled = censusStanding(verdict, profile, isWhole)
    const standing = isRamped && settled === 'inside' ? 'open' : settled
    return { grade: cue.grade, profile, colours: key, verdict, standing }
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
      held.set(key, { reader: census && readerOf(census), bytes: size })
      bytes += size
      for (const [oldest, { bytes: freed }] of held) {
        if (bytes <= MOST_BYTES || oldest === key) break
        held.delete(oldest)
        bytes -= freed
      }
      store.setState({ live: new Map() })
      follow()
    },
  }
}
