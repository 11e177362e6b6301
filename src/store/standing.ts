import type { Cue, Reel } from '../core/job/job.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import { checkKeyAt } from './checkKey.ts'
import { cuesOf, isDoubtful, reelOf } from './queries.ts'
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
  readonly tolerance: string
  readonly verdicts: ReadonlyMap<string, Verdict>
}

const count = ({ cues, reel, tolerance, verdicts }: Basis): Standing => {
  let measured = 0
  let measuredFrames = 0
  let outside = 0
  let doubtful = 0
  for (const [index, cue] of cues.entries()) {
    if (isDoubtful(cue)) doubtful++
    if (verdicts.size === 0) continue
    const verdict = verdicts.get(checkKeyAt(cues, index, reel, tolerance))
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
    tolerance: state.history.job.info.job.tolerance,
    verdicts: state.verdicts,
  }
  const before = last?.basis
  if (
    !last ||
    before?.cues !== basis.cues ||
    before.reel !== basis.reel ||
    before.tolerance !== basis.tolerance ||
    before.verdicts !== basis.verdicts
  )
    last = { basis, standing: count(basis) }
  return last.standing
}
