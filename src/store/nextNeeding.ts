import { cueIndexAt } from '../core/job/cueList.ts'
import type { Cue } from '../core/job/job.ts'
import { ASKED, CHANGED, DOUBTFUL, OUTSIDE, UNLOOKED } from './cueBits.ts'
import { cueIndex, cuesOf } from './queries.ts'
import { standingOf } from './standing.ts'
import type { AppState } from './state.ts'

/** The next cue after the line with one of these bits, going round at the end, back to this one. */
export const nextCueWith = (state: AppState, wanted: number): Cue | undefined => {
  const cues = cuesOf(state)
  const { bits } = standingOf(state)
  const here = cueIndexAt(cues, state.playhead)
  for (let step = 1; step <= cues.length; step++) {
    const index = (here + step) % cues.length
    if ((bits[index] ?? 0) & wanted) return cues[index]
  }
  return undefined
}

/** Whether a person has to come back to any cue. */
export const isAnyNeeding = (state: AppState): boolean => {
  const { doubtful, outside, asked, changed, unlooked } = standingOf(state)
  return doubtful + outside + asked + changed + unlooked > 0
}

const REASONS: readonly (readonly [bit: number, words: string])[] = [
  [DOUBTFUL, 'its boundary is doubtful'],
  [OUTSIDE, 'it is outside tolerance'],
  [ASKED, 'changes are asked'],
  [CHANGED, 'it was changed since it was agreed'],
  [UNLOOKED, 'it was not looked at'],
]

/** Why a person has to come back to a cue, in a sentence. */
export const needWords = (state: AppState, cue: Cue): string => {
  const index = cueIndex(cuesOf(state), cue)
  const bits = standingOf(state).bits[index] ?? 0
  const reasons = REASONS.filter(([bit]) => bits & bit).map(([, words]) => words)
  return `Cue ${index + 1}: ${reasons.join(', ')}.`
}
