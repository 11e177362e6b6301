import type { CueFlashes } from '../core/flashes/cueFlashes.ts'
import { codingOf } from '../core/job/codingOf.ts'
import { cueEnd } from '../core/job/cueList.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import type { ProcessList } from '../core/process/processList.ts'
import type { Frame } from '../core/time/frame.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { Verdict } from '../core/tolerance/verdict.ts'
import { shownGrade } from './proposal.ts'
import { cueIndex, cuesOf, profileOf, reelOf } from './queries.ts'
import type { AppState, LiveVerdict } from './state.ts'

const listNumbers = new WeakMap<ProcessList, number>()
let lists = 0

/** A number for each list there was: its own text may be megabytes, and there is a key a cue. */
const listNumber = (list: ProcessList): number => {
  const known = listNumbers.get(list)
  if (known !== undefined) return known
  listNumbers.set(list, ++lists)
  return lists
}

/** How a reel's scan is read, as it stands in a key. */
const codingKey = (reel: Reel) => {
  const coding = codingOf(reel)
  const { list } = reel.base
  return list ? { ...coding, base: { ...reel.base, list: listNumber(list) } } : coding
}

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
  const ramp = cue.ramp > 0 ? [cue.ramp, cue.rampShape] : []
  const own = [cue.first, end, ramp, cue.grade, cue.framing]
  return JSON.stringify([reel.id, name, bytes, codingKey(reel), tolerance, own, from])
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

/** What flashes within a cue as it is now; undefined where nothing does, or it is not measured. */
export const flashesOf = (state: AppState, cue: Cue): CueFlashes | undefined => {
  const key = checkKeyOf(state, cue)
  return key === undefined ? undefined : state.verdicts.flashes.get(key)
}

/** The same of a cue as it is shown: nothing while another grade is proposed for it. */
export const shownFlashesOf = (state: AppState, cue: Cue): CueFlashes | undefined =>
  shownGrade(state, cue) === cue.grade ? flashesOf(state, cue) : undefined

type HeldCensusKey = { readonly end: Frame; readonly reel: Reel; readonly key: string }

const censusKeys = new WeakMap<Cue, HeldCensusKey>()

/**
 * What a cue's colours depend on, as text: all that a verdict does but grade and tolerance. Worked
 * out once for each state of the cue.
 */
export const censusKeyOf = (state: AppState, cue: Cue): string | undefined => {
  const reel = reelOf(state)
  if (!reel) return undefined
  const cues = cuesOf(state)
  const end = cueEnd(cues, cueIndex(cues, cue), reel.frames)
  const held = censusKeys.get(cue)
  if (held?.end === end && held.reel === reel) return held.key
  const { name, bytes } = reel.media
  const own = [cue.first, end, cue.ramp, cue.framing]
  const key = JSON.stringify([reel.id, name, bytes, codingKey(reel), ...own])
  censusKeys.set(cue, { end, reel, key })
  return key
}

/**
 * What a cue's colours tell of it as it is shown, with the grade proposed for it where one is;
 * undefined while they are not known.
 */
export const liveVerdictOf = (state: AppState, cue: Cue): LiveVerdict | undefined => {
  const live = state.live.get(cue.id)
  return live?.grade === shownGrade(state, cue) && live.colours === censusKeyOf(state, cue)
    ? live
    : undefined
}

/** The measured verdict on a cue as it is shown: none while another grade is proposed for it. */
export const shownVerdictOf = (state: AppState, cue: Cue): Verdict | undefined =>
  shownGrade(state, cue) === cue.grade ? verdictOf(state, cue) : undefined
