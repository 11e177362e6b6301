import { valuesAt } from '../../core/job/valuesAt.ts'
import type { Framing } from '../../core/picture/framing.ts'
import { cuesOf, currentCue, previousCue } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'
import { useAppState } from '../appContext.ts'

/** The cue that values pass from on the frame under the line; undefined where no ramp runs. */
const passingFrom = (state: AppState) => {
  const cue = currentCue(state)
  const isInRamp = cue !== undefined && state.playhead < cue.first + cue.ramp
  return isInRamp ? previousCue(cuesOf(state), cue) : undefined
}

/** The framing of the cue under the line, and what is in force there while a ramp leads to it. */
export const useFramingInForce = ():
  | { readonly own: Framing; readonly inForce: Framing }
  | undefined => {
  const cue = useAppState(currentCue)
  const from = useAppState(passingFrom)
  const frame = useAppState((state) => (passingFrom(state) ? state.playhead : undefined))
  if (!cue) return undefined
  const isInRamp = from !== undefined && frame !== undefined
  return {
    own: cue.framing,
    inForce: isInRamp ? valuesAt(cue, from, frame).framing : cue.framing,
  }
}
