import type { Framing } from '../picture/framing.ts'
import { alongBox, frameBox, type Place } from './frameBox.ts'
import { withinLimit } from './framingLimit.ts'

/** Degrees in −180…180. */
const wrapped = (degrees: number): number => degrees - 360 * Math.round(degrees / 360)

/**
 * The framing turned about the middle of its frame to a rotation, in degrees. The middle stays on
 * the scan, but for a pan or tilt that would pass its limit.
 */
export const turnFrame = (from: Framing, aspect: number, rotation: number): Framing => {
  const box = frameBox(from, aspect)
  const to = wrapped(rotation)
  const [x, y] = alongBox(-to, [box.middle[0] - aspect / 2, box.middle[1] - 0.5])
  return {
    ...from,
    rotation: to,
    pan: withinLimit('pan', x / box.width),
    tilt: withinLimit('tilt', y / box.height),
  }
}

/** The framing turned about the middle of its frame so that the top of it points to `place`. */
export const turnFrameTo = (from: Framing, aspect: number, place: Place): Framing => {
  const { middle } = frameBox(from, aspect)
  const [x, y] = [place[0] - middle[0], place[1] - middle[1]]
  if (x === 0 && y === 0) return from
  return turnFrame(from, aspect, (Math.atan2(-x, -y) * 180) / Math.PI)
}
