import { cueAt, cueEnd, cueIndexAt, cuesOfReel } from '../core/job/cueList.ts'
import type { Cue, Job, Reel } from '../core/job/job.ts'
import { type ValuesAt, valuesAt } from '../core/job/valuesAt.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import { toleranceOf } from '../core/tolerance/findProfile.ts'
import type { ToleranceProfile } from '../core/tolerance/profile.ts'
import type { AppState } from './state.ts'

const NO_CUES: readonly Cue[] = []

export const jobOf = (state: AppState): Job | undefined => state.history?.job

export const reelOf = (state: AppState): Reel | undefined =>
  state.reelId === undefined ? undefined : state.history?.job.reels[state.reelId]

/** The cues of the reel on screen, in order. */
export const cuesOf = (state: AppState): readonly Cue[] =>
  state.history && state.reelId ? cuesOfReel(state.history.job, state.reelId) : NO_CUES

/** The cue a frame of the reel on screen belongs to. */
export const cueAtFrame = (state: AppState, frame: Frame): Cue | undefined =>
  state.history && state.reelId ? cueAt(state.history.job, state.reelId, frame) : undefined

/** The cue under the line: the one the bench works on. */
export const currentCue = (state: AppState): Cue | undefined => cueAtFrame(state, state.playhead)

/** The place of a cue among its reel's, from 0. */
export const cueIndex = (cues: readonly Cue[], cue: Cue): number => cueIndexAt(cues, cue.first)

export const previousCue = (cues: readonly Cue[], cue: Cue): Cue | undefined =>
  cues[cueIndex(cues, cue) - 1]

/** The first frame after a cue. */
export const endOfCue = (cues: readonly Cue[], cue: Cue, reel: Reel): Frame =>
  cueEnd(cues, cueIndex(cues, cue), reel.frames)

/** What is in force on a frame of the reel on screen. */
export const valuesAtFrame = (state: AppState, frame: Frame): ValuesAt | undefined => {
  const cue = cueAtFrame(state, frame)
  return cue && valuesAt(cue, previousCue(cuesOf(state), cue), frame)
}

/** The tolerance the job is held to. */
export const profileOf = ({ info }: Job): ToleranceProfile => toleranceOf(info.job)

/** The same of the job that is open. */
export const profileHere = (state: AppState): ToleranceProfile | undefined => {
  const job = jobOf(state)
  return job && profileOf(job)
}

/** Whether a cue begins after frame `a` and up to frame `b`, or the other way round. */
export const isCueBetween = (state: AppState, a: Frame, b: Frame): boolean => {
  const cue = cueAtFrame(state, b > a ? b : a)
  return cue !== undefined && cue.first > Math.min(a, b)
}

/** The first frame of a cue that has its own values, past its ramp: where it is to be judged. */
export const settledFrame = (state: AppState, cue: Cue): Frame => {
  const cues = cuesOf(state)
  const reel = reelOf(state)
  if (!reel || cue.ramp === 0 || !previousCue(cues, cue)) return cue.first
  return frame(Math.min(cue.first + cue.ramp, endOfCue(cues, cue, reel) - 1))
}
