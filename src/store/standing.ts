import { agreementAt } from '../core/agreement/agreementOf.ts'
import { cueIndexAt } from '../core/job/cueList.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import type { CueId } from '../core/job/recordIds.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import { checkKeyAt, liveVerdictOf } from './checkKey.ts'
import {
  ASKED,
  CHANGED,
  DOUBTFUL,
  MEASURED,
  NOT_AGREED,
  OUTSIDE,
  ownBits,
  UNLOOKED,
} from './cueBits.ts'
import { cuesOf, jobOf, profileOf, reelOf } from './queries.ts'
import type { AppState } from './state.ts'
import { isNext } from './verdictBook.ts'

/** How the cues of the reel on screen stand. */
export type Standing = {
  readonly measured: number
  readonly measuredFrames: number
  /**
   * Outside tolerance. One that is being changed counts until its new verdict, or what its colours
   * tell, says that it is inside.
   */
  readonly outside: number
  readonly doubtful: number
  readonly unlooked: number
  readonly notAgreed: number
  readonly asked: number
  readonly changed: number
  /** The same for each cue, in order: see `cueBits.ts`. */
  readonly bits: Uint8Array
}

type Basis = {
  readonly state: AppState
  readonly cues: readonly Cue[]
  readonly reel: Reel
  readonly profile: ToleranceProfile
}

type Counted = {
  readonly basis: Basis
  readonly standing: Standing
  /** Frames measured of each cue. */
  readonly frames: Uint32Array
}

const NOTHING: Standing = {
  measured: 0,
  measuredFrames: 0,
  outside: 0,
  doubtful: 0,
  unlooked: 0,
  notAgreed: 0,
  asked: 0,
  changed: 0,
  bits: new Uint8Array(0),
}

/** Whether a cue is outside while it has no verdict: as its colours tell, else as it was. */
const isOutsideMeanwhile = (state: AppState, cue: Cue, wasOutside: boolean): boolean => {
  const live = liveVerdictOf(state, cue)
  if (live?.grade !== cue.grade || live.standing === 'open') return wasOutside
  return live.standing === 'outside'
}

/** Works out the bits of the cues at `places`, and adds the difference up. */
const recount = (
  { standing: before, frames: framesBefore }: Pick<Counted, 'standing' | 'frames'>,
  basis: Basis,
  places: Iterable<number>,
  wasOutside: (index: number) => boolean,
): Counted => {
  const { state, cues, reel, profile } = basis
  const { verdicts, looked } = state
  const bits = before.bits.slice()
  const frames = framesBefore.slice()
  const sums = new Map<number, number>()
  let { measuredFrames } = before
  for (const index of places) {
    const cue = cues[index]
    if (!cue) continue
    const verdict =
      verdicts.version === 0
        ? undefined
        : verdicts.entries.get(checkKeyAt(cues, index, reel, profile))
    const isOutside = verdict
      ? !verdict.isInside
      : isOutsideMeanwhile(state, cue, wasOutside(index))
    const was = bits[index] ?? 0
    const agreement = agreementAt(basis, index)
    const now =
      ownBits(cue, agreement, looked) | (verdict ? MEASURED : 0) | (isOutside ? OUTSIDE : 0)
    measuredFrames += (verdict?.frames ?? 0) - (frames[index] ?? 0)
    frames[index] = verdict?.frames ?? 0
    bits[index] = now
    for (let differing = was ^ now; differing !== 0; differing &= differing - 1) {
      const bit = differing & -differing
      sums.set(bit, (sums.get(bit) ?? 0) + (now & bit ? 1 : -1))
    }
  }
  const more = (bit: number): number => sums.get(bit) ?? 0
  const standing = {
    measured: before.measured + more(MEASURED),
    measuredFrames,
    outside: before.outside + more(OUTSIDE),
    doubtful: before.doubtful + more(DOUBTFUL),
    unlooked: before.unlooked + more(UNLOOKED),
    notAgreed: before.notAgreed + more(NOT_AGREED),
    asked: before.asked + more(ASKED),
    changed: before.changed + more(CHANGED),
    bits,
  }
  return { basis, standing, frames }
}

const OUT_OF_NOTHING = (count: number): Pick<Counted, 'standing' | 'frames'> => ({
  standing: { ...NOTHING, bits: new Uint8Array(count) },
  frames: new Uint32Array(count),
})

/** Whether what was outside before is so still, as far as is known. */
const isSameTolerance = (before: Basis, { state, reel, profile }: Basis): boolean =>
  before.reel === reel &&
  before.profile === profile &&
  before.state.shelfKey === state.shelfKey &&
  (before.state.verdicts.entries === state.verdicts.entries ||
    isNext(state.verdicts, before.state.verdicts))

const countAll = (basis: Basis, last: Counted | undefined): Counted => {
  const { cues } = basis
  const outside = new Set<CueId>()
  if (last && isSameTolerance(last.basis, basis))
    for (const [index, cue] of last.basis.cues.entries())
      if ((last.standing.bits[index] ?? 0) & OUTSIDE) outside.add(cue.id)
  return recount(OUT_OF_NOTHING(cues.length), basis, cues.keys(), (index) => {
    const cue = cues[index]
    return cue !== undefined && outside.has(cue.id)
  })
}

/** The places of cues that may stand otherwise than they did; undefined where all may. */
const changedPlaces = (before: Basis, basis: Basis): ReadonlySet<number> | undefined => {
  const { state, cues } = basis
  const { state: old, cues: oldCues } = before
  if (cues.length !== oldCues.length || state.looked !== old.looked) return undefined
  const places = new Set<number>()
  if (cues !== oldCues)
    for (let i = 0; i < cues.length; i++)
      if (cues[i] !== oldCues[i]) {
        if (cues[i]?.id !== oldCues[i]?.id) return undefined
        places
          .add(i - 1)
          .add(i)
          .add(i + 1)
      }
  if (state.verdicts !== old.verdicts) {
    const { latest } = state.verdicts
    if (latest) places.add(cueIndexAt(cues, latest.first))
  }
  if (state.live !== old.live)
    for (const id of [...state.live.keys(), ...old.live.keys()]) {
      const cue = jobOf(state)?.cues[id]
      if (cue) places.add(cueIndexAt(cues, cue.first))
    }
  return places
}

let last: Counted | undefined

/**
 * How the cues stand. Counted whole when reel or tolerance have changed, else only for the cues that
 * a change, a verdict or a look was about.
 */
export const standingOf = (state: AppState): Standing => {
  const reel = reelOf(state)
  if (!reel || !state.history) return NOTHING
  const basis = { state, cues: cuesOf(state), reel, profile: profileOf(state.history.job) }
  const before = last?.basis
  const isSame =
    before?.cues === basis.cues &&
    before.reel === reel &&
    before.profile === basis.profile &&
    before.state.verdicts === state.verdicts &&
    before.state.live === state.live &&
    before.state.looked === state.looked &&
    before.state.shelfKey === state.shelfKey
  if (last && isSame) return last.standing
  const places = before && isSameTolerance(before, basis) ? changedPlaces(before, basis) : undefined
  const known = last
  last =
    known && places
      ? recount(
          known,
          basis,
          places,
          (index) => ((known.standing.bits[index] ?? 0) & OUTSIDE) !== 0,
        )
      : countAll(basis, known)
  return last.standing
}
