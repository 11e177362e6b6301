import { apertureFraming } from '../core/framing/apertureFraming.ts'
import { type Framing, IDENTITY_FRAMING } from '../core/picture/framing.ts'
import { currentCue, reelOf } from './queries.ts'
import type { AppState } from './state.ts'

/**
 * The cue's framing as it was before what is dragged now, so that the view of the scan stays as it
 * is under the pointer until the drag ends.
 */
const framingAtRest = (state: AppState): Framing => {
  const cue = currentCue(state)
  if (!cue) return IDENTITY_FRAMING
  const last = state.history?.past.at(-1)
  const isDragged = state.gesture !== undefined && last?.gesture === state.gesture
  const before = isDragged ? last?.change.cues?.updated[cue.id]?.[0] : undefined
  return (before ?? cue).framing
}

/** The framing that the whole scan is drawn with in the aperture view. */
export const apertureFramingOf = (state: AppState): Framing =>
  apertureFraming(framingAtRest(state), reelOf(state)?.media.displayAspect ?? 4 / 3)
