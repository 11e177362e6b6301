import { type Grade, IDENTITY_GRADE } from '../core/colour/grade.ts'
import type { Coding } from '../core/picture/planes.ts'
import type { Frame } from '../core/time/frame.ts'
import { shownBase } from './proposal.ts'
import { cueAtFrame, reelOf, valuesAtFrame } from './queries.ts'
import type { AppState } from './state.ts'

/** The grade that the instruments read a frame through: none where they show the scanned signal. */
export const measuredGrade = (state: AppState, frame: Frame): Grade | undefined => {
  if (state.instruments.signal === 'scanned') return IDENTITY_GRADE
  const change = state.proposal?.change
  const isProposed = change?.kind === 'grade' && change.cue === cueAtFrame(state, frame)?.id
  return isProposed ? change.grade : valuesAtFrame(state, frame)?.grade
}

/** How a frame is read: with the base of its reel, or the one that is proposed for it. */
export const measuredCoding = (state: AppState, coding: Coding): Coding => {
  const reel = reelOf(state)
  const base = reel && shownBase(state, reel)
  return base === undefined || base === coding.base ? coding : { ...coding, base }
}
