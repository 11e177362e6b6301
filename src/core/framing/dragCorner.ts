import { FRAMING_LIMITS } from '../job/commands/setFraming.ts'
import type { Framing } from '../picture/framing.ts'
import { alongBox, CORNERS, type Corner, frameBox, type Place, placeInBox } from './frameBox.ts'
import { withinLimit } from './framingLimit.ts'

/** What stays where it is while a corner is dragged. */
export type Anchor = 'opposite' | 'middle'

/** A pan or tilt as a frame is zoomed about a fixed place: `slope`·zoom + `start`. */
type Line = { readonly field: 'pan' | 'tilt'; readonly slope: number; readonly start: number }

const valueAt = ({ field, slope, start }: Line, zoom: number): number =>
  withinLimit(field, slope * zoom + start)

/** The zooms at which a line is within its limits; the one the frame has now is among them. */
const zoomsWithin = ({ field, slope, start }: Line): readonly [low: number, high: number] => {
  if (slope === 0) return FRAMING_LIMITS.zoom
  const [low, high] = FRAMING_LIMITS[field]
  const [a, b] = [(low - start) / slope, (high - start) / slope]
  return [Math.min(a, b), Math.max(a, b)]
}

/**
 * The framing with another zoom, about a fixed place of its frame: the corner opposite `corner`,
 * or the middle. It stops at the limits of zoom, and where pan or tilt would pass theirs.
 */
export const zoomFrame = (
  from: Framing,
  aspect: number,
  corner: Corner,
  anchor: Anchor,
  zoom: number,
): Framing => {
  const [right, down] = anchor === 'middle' ? [0, 0] : CORNERS[corner]
  const fixed = placeInBox(frameBox(from, aspect), -right, -down)
  const [x, y] = alongBox(-from.rotation, [fixed[0] - aspect / 2, fixed[1] - 0.5])
  // The middle is half a frame from what is fixed, and pan counts in frames.
  const pan: Line = { field: 'pan', slope: (x * from.squeeze) / aspect, start: right / 2 }
  const tilt: Line = { field: 'tilt', slope: y, start: down / 2 }
  const [low, high] = [zoomsWithin(pan), zoomsWithin(tilt)].reduce(([a, b], [c, d]) => [
    Math.max(a, c),
    Math.min(b, d),
  ])
  const to = withinLimit('zoom', Math.min(high, Math.max(low, zoom)))
  return { ...from, zoom: to, pan: valueAt(pan, to), tilt: valueAt(tilt, to) }
}

/**
 * The framing whose `corner` lies at `place`, in heights of the scan, or, as the frame keeps its
 * shape, at the nearest place on its diagonal. It stops where `zoomFrame` does.
 */
export const dragCorner = (
  from: Framing,
  aspect: number,
  corner: Corner,
  anchor: Anchor,
  place: Place,
): Framing => {
  const [right, down] = CORNERS[corner]
  const box = frameBox(from, aspect)
  const fixed = anchor === 'middle' ? box.middle : placeInBox(box, -right, -down)
  const at = placeInBox(box, right, down)
  const [dx, dy] = [at[0] - fixed[0], at[1] - fixed[1]]
  const along = (place[0] - fixed[0]) * dx + (place[1] - fixed[1]) * dy
  const size = along / (dx * dx + dy * dy)
  const zoom = size > 0 ? from.zoom / size : FRAMING_LIMITS.zoom[1]
  return zoomFrame(from, aspect, corner, anchor, zoom)
}
