import type { Cue, Reel } from '../core/job/job.ts'
import type { Frame } from '../core/time/frame.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import { cueIndex, cuesOf, endOfCue, reelOf } from './queries.ts'
import type { AppState } from './state.ts'

/** What a cue's verdict depends on, as text: the same text means the same verdict. */
export const checkKey = (
  cue: Cue,
  previous: Cue | undefined,
  end: Frame,
  reel: Reel,
  profile: string,
): string => {
  const { matrix, range, name, bytes } = reel.media
  const from = cue.ramp > 0 && previous ? [previous.grade, previous.framing] : []
  const own = [cue.first, end, cue.ramp, cue.grade, cue.framing]
  return JSON.stringify([reel.id, name, bytes, matrix, range, profile, own, from])
}

type HeldKey = {
  readonly previous: Cue | undefined
  readonly end: Frame
  readonly reel: Reel
  readonly profile: string
  readonly key: string
}

const keys = new WeakMap<Cue, HeldKey>()

/** `checkKey` of a cue in the job on screen; worked out once for each state of the cue. */
export const checkKeyOf = (state: AppState, cue: Cue): string | undefined => {
  const reel = reelOf(state)
  if (!reel || !state.history) return undefined
  const cues = cuesOf(state)
  const previous = cues[cueIndex(cues, cue) - 1]
  const end = endOfCue(cues, cue, reel)
  const held = keys.get(cue)
  const profile = state.history.job.info.job.tolerance
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

/** The verdict on a cue as it is now; undefined while it has not been measured. */
export const verdictOf = (state: AppState, cue: Cue): Verdict | undefined => {
  const key = checkKeyOf(state, cue)
  return key === undefined ? undefined : state.verdicts.get(key)
}
