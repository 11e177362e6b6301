import type { Cue, Reel } from '../core/job/job.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import { checkKeyAt } from './checkKey.ts'
import { cuesOf, isDoubtful, profileOf, reelOf } from './queries.ts'
import type { AppState } from './state.ts'

/** How the cues of the reel on screen stand. */
export type Standing = {
  readonly measured: number
  readonly measuredFrames: number
  readonly outside: number
  readonly doubtful: number
}

type Basis = {
  readonly cues: readonly Cue[]
  readonly reel: Reel
  readonly profile: ToleranceProfile
  readonly verdicts: ReadonlyMap<string, Verdict>
}

const count = ({ cues, reel, profile, verdicts }: Basis): Standing => {
  let measured = 0
  let measuredFrames = 0
  let outside = 0
  let doubtful = 0
  for (const [index, cue] of cues.entries()) {
    if (isDoubtful(cue)) doubtful++
    if (verdicts.size === 0) continue
    const verdict = verdicts.get(checkKeyAt(cues, index, reel, profile))
    if (!verdict) continue
    measured++
    measuredFrames += verdict.frames
    if (!verdict.isInside) outside++
  }
  return { measured, measuredFrames, outside, doubtful }
}

const NOTHING: Standing = { measured: 0, measuredFrames: 0, outside: 0, doubtful: 0 }

let last: { readonly basis: Basis; readonly standing: Standing } | undefined

/** How the cues stand; counted again only when cues, reel, tolerance or verdicts have changed. */
export const standingOf = (state: AppState): Standing => {
  const reel = reelOf(state)
  if (!reel || !state.history) return NOTHING
  const basis = {
    cues: cuesOf(state),
    reel,
    profile: profileOf(state.history.job),
    verdicts: state.verdicts,
  }
  const before = last?.basis
  if (
    !last ||
    before?.cues !== basis.cues ||
    before.reel !== basis.reel ||
    before.profile !== basis.profile ||
    before.verdicts !== basis.verdicts
  )
    last = { basis, standing: count(basis) }
  return last.standing
}
