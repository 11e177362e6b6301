import { cueIndexAt } from '../core/job/cueList.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import { checkKeyAt } from './checkKey.ts'
import { cuesOf, isDoubtful, profileOf, reelOf } from './queries.ts'
import type { AppState } from './state.ts'
import { isNext, type VerdictBook } from './verdictBook.ts'

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
  readonly verdicts: VerdictBook
}

const count = ({ cues, reel, profile, verdicts }: Basis): Standing => {
  let measured = 0
  let measuredFrames = 0
  let outside = 0
  let doubtful = 0
  for (const [index, cue] of cues.entries()) {
    if (isDoubtful(cue)) doubtful++
    if (verdicts.version === 0) continue
    const verdict = verdicts.entries.get(checkKeyAt(cues, index, reel, profile))
    if (!verdict) continue
    measured++
    measuredFrames += verdict.frames
    if (!verdict.isInside) outside++
  }
  return { measured, measuredFrames, outside, doubtful }
}

const NOTHING: Standing = { measured: 0, measuredFrames: 0, outside: 0, doubtful: 0 }

/** How they stand with the verdict that was entered last, where that is of one of these cues. */
const countLatest = (standing: Standing, { cues, reel, profile, verdicts }: Basis): Standing => {
  const { latest } = verdicts
  if (!latest) return standing
  const index = cueIndexAt(cues, latest.first)
  if (checkKeyAt(cues, index, reel, profile) !== latest.key) return standing
  return {
    ...standing,
    measured: standing.measured + 1,
    measuredFrames: standing.measuredFrames + latest.verdict.frames,
    outside: standing.outside + (latest.verdict.isInside ? 0 : 1),
  }
}

let last: { readonly basis: Basis; readonly standing: Standing } | undefined

/**
 * How the cues stand; counted again only when cues, reel or tolerance have changed: a verdict more
 * is added to what was counted.
 */
export const standingOf = (state: AppState): Standing => {
  const reel = reelOf(state)
  if (!reel || !state.history) return NOTHING
  const { verdicts } = state
  const basis = { cues: cuesOf(state), reel, profile: profileOf(state.history.job), verdicts }
  const before = last?.basis
  const isSameJob =
    before?.cues === basis.cues && before.reel === reel && before.profile === basis.profile
  if (last && isSameJob && before.verdicts === verdicts) return last.standing
  const standing =
    last && isSameJob && isNext(verdicts, before.verdicts)
      ? countLatest(last.standing, basis)
      : count(basis)
  last = { basis, standing }
  return standing
}
