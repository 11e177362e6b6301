import { type Framing, IDENTITY_FRAMING } from '../picture/framing.ts'
import { type Anchor, dragCorner, zoomFrame } from './dragCorner.ts'
import { alongBox, CORNERS, type Corner, frameBox, type Place, placeInBox } from './frameBox.ts'
import { tidyFraming, withinLimit } from './framingLimit.ts'
import { moveFrame } from './moveFrame.ts'
import { turnFrame, turnFrameTo } from './turnFrame.ts'

/** What the frame is taken by: its inside, the handle over its top, or a corner. */
export type Grip = 'move' | 'turn' | Corner

/** What a drag by a grip changes. */
export const GRIP_FIELDS = {
  move: ['pan', 'tilt'],
  turn: ['rotation', 'pan', 'tilt'],
  corner: ['zoom', 'pan', 'tilt'],
} as const

export const fieldsOfGrip = (grip: Grip): readonly (keyof Framing)[] =>
  GRIP_FIELDS[grip === 'move' || grip === 'turn' ? grip : 'corner']

/** Where the handle that turns the frame is: `arm` heights of the scan over the middle of its top. */
export const turnGripAt = (framing: Framing, aspect: number, arm: number): Place => {
  const box = frameBox(framing, aspect)
  const [x, y] = alongBox(box.rotation, [0, -arm])
  const top = placeInBox(box, 0, -1)
  return [top[0] + x, top[1] + y]
}

/** A drag: what is dragged, how far since it was taken, in heights of the scan, about what. */
export type FrameDrag = {
  readonly grip: Grip
  readonly by: Place
  readonly anchor: Anchor
  /** How far the turning handle stands over the frame; see `turnGripAt`. */
  readonly arm: number
}

/** The framing that a drag makes of the one it began with. */
export const dragFrame = (
  from: Framing,
  aspect: number,
  { grip, by, anchor, arm }: FrameDrag,
): Framing => {
  const after = (place: Place): Place => [place[0] + by[0], place[1] + by[1]]
  if (grip === 'move') return tidyFraming(moveFrame(from, aspect, by))
  if (grip === 'turn')
    return tidyFraming(turnFrameTo(from, aspect, after(turnGripAt(from, aspect, arm))))
  const corner = placeInBox(frameBox(from, aspect), ...CORNERS[grip])
  return tidyFraming(dragCorner(from, aspect, grip, anchor, after(corner)))
}

/** What an arrow key moves by, before Shift and Alt: as much as it does in the number's own field. */
export const FRAMING_STEPS: Readonly<Record<keyof Framing, number>> = {
  zoom: 0.01,
  pan: 0.001,
  tilt: 0.001,
  rotation: 0.1,
  squeeze: 0.01,
  blanking: 0.001,
}

/** The framing after an arrow key on a grip: `right` and `down` are −1, 0 or 1 times its coarseness. */
export const nudgeFrame = (
  from: Framing,
  aspect: number,
  grip: Grip,
  [right, down]: Place,
  anchor: Anchor,
): Framing => {
  if (grip === 'move')
    return tidyFraming({
      ...from,
      pan: withinLimit('pan', from.pan + right * FRAMING_STEPS.pan),
      tilt: withinLimit('tilt', from.tilt + down * FRAMING_STEPS.tilt),
    })
  if (grip === 'turn') {
    const rotation = from.rotation - (right + down) * FRAMING_STEPS.rotation
    return tidyFraming(turnFrame(from, aspect, rotation))
  }
  const outward = right * CORNERS[grip][0] + down * CORNERS[grip][1]
  const zoom = from.zoom - outward * FRAMING_STEPS.zoom
  return tidyFraming(zoomFrame(from, aspect, grip, anchor, zoom))
}

/** The framing with what a grip changes put back: the middle in the middle, upright, or zoom 1. */
export const resetGrip = (from: Framing, aspect: number, grip: Grip): Framing => {
  const { zoom, rotation, pan, tilt } = IDENTITY_FRAMING
  if (grip === 'move') return { ...from, pan, tilt }
  if (grip === 'turn') return tidyFraming(turnFrame(from, aspect, rotation))
  return tidyFraming(zoomFrame(from, aspect, grip, 'middle', zoom))
}
