import type { Framing } from '../picture/framing.ts'
import { alongBox, frameBox, type Place } from './frameBox.ts'
import { withinLimit } from './framingLimit.ts'

/**
 * A framing whose frame has moved over the scan `by` so much, in heights of the scan; it stops
 * where pan or tilt is at its limit.
 */
export const moveFrame = (from: Framing, aspect: number, by: Place): Framing => {
  const box = frameBox(from, aspect)
  const [x, y] = alongBox(-from.rotation, by)
  return {
    ...from,
    pan: withinLimit('pan', from.pan + x / box.width),
    tilt: withinLimit('tilt', from.tilt + y / box.height),
  }
}
