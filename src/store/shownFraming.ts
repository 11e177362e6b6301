import { type Framing, IDENTITY_FRAMING } from '../core/picture/framing.ts'
import { apertureFramingOf } from './apertureView.ts'
import { valuesAtFrame } from './queries.ts'
import type { AppState } from './state.ts'

/**
 * The framing that the picture on screen is drawn with: what is in force on the frame under the
 * line; the whole scan while that is looked at.
 */
export const shownFraming = (state: AppState): Framing => {
  const { view, playhead } = state
  if (view.isPeeking) return IDENTITY_FRAMING
  if (view.showsAperture) return apertureFramingOf(state)
  return valuesAtFrame(state, playhead)?.framing ?? IDENTITY_FRAMING
}
