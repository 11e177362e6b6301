import { codingOf } from '../core/job/codingOf.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { AppStore } from '../store/appStore.ts'
import { censusKeyOf, checkKeyAt, checkKeyOf } from '../store/checkKey.ts'
import {
  cueIndex,
  cuesOf,
  currentCue,
  endOfCue,
  jobOf,
  previousCue,
  profileOf,
  reelOf,
} from '../store/queries.ts'
import { standingOf } from '../store/standing.ts'
import type { AppState } from '../store/state.ts'
import { isPassAtWork } from '../store/transferring.ts'
import { withVerdict } from '../store/verdictBook.ts'
import { createPaceKeeper } from '../work/pace.ts'
import type { CensusDesk } from './censusDesk.ts'
import { isAbort, tellError } from './tellError.ts'
import type { Workers } from './workers.ts'

/** How long a cue must be left alone before it is measured anew. */
const SETTLE_MS = 250

type Running = {
  readonly cue: Cue
  readonly key: string
  readonly stop: AbortController
}

/** Whether measuring may run now: it gives way to playing, to finding shots and to a pass. */
const mayCheck = (state: AppState): boolean =>
  state.media === 'ready' &&
  !state.playback.isPlaying &&
  state.finding === undefined &&
  !isPassAtWork(state.transferring)

/** Finds the cue to measure next: the one under the line first, then down the list. */
const createUncheckedFinder = (censuses: CensusDesk) => {
  /** All cues before this one have verdicts, as long as these are the same. */
  let from:
    | { cues: readonly Cue[]; reel: Reel; profile: ToleranceProfile; index: number }
    | undefined
  return (state: AppState): Cue | undefined => {
    const job = jobOf(state)
    const reel = reelOf(state)
    if (!job || !reel) return undefined
    const cues = cuesOf(state)
    const profile = profileOf(job)
    const isUnchecked = (index: number): boolean =>
      !state.verdicts.entries.has(checkKeyAt(cues, index, reel, profile))
    const current = currentCue(state)
    if (current && (isUnchecked(cueIndex(cues, current)) || censuses.isWanted(state, current)))
      return current
    const isSame = from?.cues === cues && from.reel === reel && from.profile === profile
    let index = isSame && from ? from.index : 0
    while (index < cues.length && !isUnchecked(index)) index++
    from = { cues, reel, profile, index }
    return cues[index]
  }
}

/**
 * Measures every cue of the reel in the background whenever its verdict is not known, beginning
 * with the one under the line, whose colours are counted too if they are not known. The colours of
 * every cue are counted once at least, for what it looks like. A change to the cue being measured
 * starts it again.
 */
export const startChecker = (store: AppStore, workers: Workers, censuses: CensusDesk): void => {
  let running: Running | undefined
  let timer: ReturnType<typeof setTimeout> | undefined

  const nextUnchecked = createUncheckedFinder(censuses)

  const check = async (cue: Cue): Promise<void> => {
    const state = store.getState()
    const reel = reelOf(state)
    const job = jobOf(state)
    const key = checkKeyOf(state, cue)
    if (!reel || !job || key === undefined) return
    const cues = cuesOf(state)
    const end = endOfCue(cues, cue, reel)
    const stop = new AbortController()
    running = { cue, key, stop }
    const before = standingOf(state).measuredFrames
    const pace = createPaceKeeper(reel.frames - before, () => performance.now())
    const tell = (done: number): void =>
      store.setState({
        checking: { ...pace(done), done: before + done, total: reel.frames },
      })
    tell(0)
    try {
      const censusKey = censusKeyOf(state, cue)
      const wantsCensus = censuses.isWanted(state, cue)
      const wantsLook = censusKey !== undefined && !state.looks.entries.has(censusKey)
      const { verdict, census, look, flashes } = await workers.passes(
        'checkCue',
        {
          check: { cue, previous: previousCue(cues, cue), end },
          coding: codingOf(reel),
          profile: profileOf(job),
          rate: reel.rate,
          wantsCensus,
          wantsLook,
        },
        { signal: stop.signal, onProgress: tell },
      )
      if (verdict)
        store.setState(({ verdicts }) => ({
          verdicts: withVerdict(verdicts, key, verdict, cue.first, flashes),
        }))
      if (look && censusKey !== undefined) censuses.keepLook(censusKey, look)
      if (wantsCensus && censusKey !== undefined) censuses.keep(censusKey, census)
    } catch (error) {
      // What stopped it has said when to begin again: not before the cue is left alone.
      if (!isAbort(error) && store.getState().media === 'ready') tellError(store, error)
      return
    } finally {
      running = undefined
      store.setState({ checking: undefined })
    }
    consider(0)
  }
  const consider = (delay: number): void => {
    clearTimeout(timer)
    timer = setTimeout(() => {
      const state = store.getState()
      if (running || !mayCheck(state)) return
      const cue = nextUnchecked(state)
      if (cue) void check(cue)
    }, delay)
  }
  store.subscribe((state, before) => {
    const isAffected =
      state.history !== before.history ||
      state.media !== before.media ||
      state.playback.isPlaying !== before.playback.isPlaying ||
      state.finding !== before.finding ||
      isPassAtWork(state.transferring) !== isPassAtWork(before.transferring) ||
      state.reelId !== before.reelId ||
      (currentCue(state) !== currentCue(before) && !running)
    if (!isAffected) return
    if (running) {
      const { cue, key, stop } = running
      const now = jobOf(state)?.cues[cue.id]
      const isStillWanted = now !== undefined && checkKeyOf(state, now) === key
      if (!isStillWanted || !mayCheck(state)) stop.abort()
    }
    consider(SETTLE_MS)
  })
}
