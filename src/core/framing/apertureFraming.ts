import { type Framing, IDENTITY_FRAMING } from '../picture/framing.ts'
import { frameOutline, type Place } from './frameBox.ts'

/** How much of the picture the scan and the frame take: black around them has room for handles. */
const TAKEN = 0.8

/**
 * How the whole scan is shown with the delivered frame on it: upright in the middle, drawn so
 * small that the frame is wholly visible too. The picture and what lies over it go by this.
 */
export const apertureFraming = (framing: Framing, aspect: number): Framing => {
  const reach = frameOutline(framing, aspect).reduce(
    (most, [x, y]) => Math.max(most, Math.abs((2 * x) / aspect - 1), Math.abs(2 * y - 1)),
    1,
  )
  return { ...IDENTITY_FRAMING, zoom: TAKEN / reach }
}

/** Where a place of the scan is seen when it is drawn at such a zoom: 0…1 across and down. */
export const seenAt = (zoom: number, aspect: number, [x, y]: Place): Place => [
  0.5 + zoom * (x / aspect - 0.5),
  0.5 + zoom * (y - 0.5),
]
