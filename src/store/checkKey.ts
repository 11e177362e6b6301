import { codingOf } from '../core/job/codingOf.ts'
import { cueEnd } from '../core/job/cueList.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import type { Frame } from '../core/time/frame.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import { cueIndex, cuesOf, profileOf, reelOf } from './queries.ts'
import type { AppState, LiveVerdict } from './state.ts'

/** What a cue's verdict depends on, as text: the same text means the same verdict. */
const checkKey = (
  cue: Cue,
  previous: Cue | undefined,
  end: Frame,
  reel: Reel,
  { id, rgb, luma, composite, area, filtered }: ToleranceProfile,
): string => {
  const { name, bytes } = reel.media
  const tolerance = [id, rgb, luma, composite, area, filtered]
  const from = cue.ramp > 0 && previous ? [previous.grade, previous.framing] : []
  const own = [cue.first, end, cue.ramp, cue.grade, cue.framing]
  return JSON.stringify([reel.id, name, bytes, codingOf(reel), tolerance, own, from])
}

type HeldKey = {
  readonly previous: Cue | undefined
  readonly end: Frame
  readonly reel: Reel
  readonly profile: ToleranceProfile
  readonly key: string
}

const keys = new WeakMap<Cue, HeldKey>()

/** `checkKey` of a reel's cue by its place; worked out once for each state of the cue. */
export const checkKeyAt = (
  cues: readonly Cue[],
  index: number,
  reel: Reel,
  profile: ToleranceProfile,
): string => {
  const cue = cues[index]
  if (!cue) return ''
  const previous = cues[index - 1]
  const end = cueEnd(cues, index, reel.frames)
  const held = keys.get(cue)
  if (
    held?.previous === previous &&
    held?.end === end &&
    held?.reel === reel &&
    held?.profile === profile
  )
    return held.key
  const key = checkKey(cue, previous, end, reel, profile)
  keys.set(cue, { previous, end, reel, profile, key })
  return key
}

/** What the verdict on a cue of the job on screen depends on, as text. */
export const checkKeyOf = (state: AppState, cue: Cue): string | undefined => {
  const reel = reelOf(state)
  if (!reel || !state.history) return undefined
  const cues = cuesOf(state)
  return checkKeyAt(cues, cueIndex(cues, cue), reel, profileOf(state.history.job))
}

/** The verdict on a cue as it is now; undefined while it has not been measured. */
export const verdictOf = (state: AppState, cue: Cue): Verdict | undefined => {
  const key = checkKeyOf(state, cue)
  return key === undefined ? undefined : state.verdicts.entries.get(key)
}

/** What a cue's colours depend on, as text: all that a verdict does but grade and tolerance. */
export const censusKeyOf = (state: AppState, cue: Cue): string | undefined => {
  const reel = reelOf(state)
  if (!reel) return undefined
  const cues = cuesOf(state)
  const end = cueEnd(cues, cueIndex(cues, cue), reel.frames)
  const { name, bytes } = reel.media
  return JSON.stringify([
    reel.id,
    name,
    bytes,
    codingOf(reel),
    cue.first,
    end,
    cue.ramp,
    cue.framing,
  ])
}

/** What a cue's colours tell of it as it is; undefined while they are not known. */
export const liveVerdictOf = (state: AppState, cue: Cue): LiveVerdict | undefined => {
  const live = state.live.get(cue.id)
  return live?.grade === cue.grade && live.colours === censusKeyOf(state, cue) ? live : undefined
}
