import type { Framing } from '../picture/framing.ts'

/** A place on the scan as shown, in heights of it: 0…`aspect` across from the left, 0…1 down. */
export type Place = readonly [x: number, y: number]

/** The delivered frame as it lies on the scan, in heights of the scan. */
export type FrameBox = {
  readonly middle: Place
  readonly width: number
  readonly height: number
  /** In degrees, as in `Framing`: the picture turns clockwise, so the box turns the other way. */
  readonly rotation: number
}

/** From the middle of a box along its own axes (right, down) to the scan's. */
export const alongBox = (rotation: number, [x, y]: Place): Place => {
  const angle = (rotation * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return [cos * x + sin * y, -sin * x + cos * y]
}

/** Where the frame of a framing lies on a scan whose shape is `aspect`; see `framingMap`. */
export const frameBox = (framing: Framing, aspect: number): FrameBox => {
  const { zoom, squeeze, pan, tilt, rotation } = framing
  const [width, height] = [aspect / (zoom * squeeze), 1 / zoom]
  const [x, y] = alongBox(rotation, [pan * width, tilt * height])
  return { middle: [aspect / 2 + x, 0.5 + y], width, height, rotation }
}

/** The framing whose frame is `box`: the inverse of `frameBox`. Blanking is no matter of the box. */
export const framingOfBox = (
  { middle, width, height, rotation }: FrameBox,
  aspect: number,
  blanking: number,
): Framing => {
  const [x, y] = alongBox(-rotation, [middle[0] - aspect / 2, middle[1] - 0.5])
  return {
    zoom: 1 / height,
    pan: x / width,
    tilt: y / height,
    rotation,
    squeeze: (aspect * height) / width,
    blanking,
  }
}

/** The corners of a box: top left, top right, bottom right, bottom left, as the viewer has them. */
export type Corner = 'top-left' | 'top-right' | 'bottom-right' | 'bottom-left'

/** Which way a corner lies from the middle of the box, along its own axes. */
export const CORNERS: Readonly<Record<Corner, readonly [right: -1 | 1, down: -1 | 1]>> = {
  'top-left': [-1, -1],
  'top-right': [1, -1],
  'bottom-right': [1, 1],
  'bottom-left': [-1, 1],
}

/** A place of the delivered frame on the scan: −1…1 from its left to its right, its top to its bottom. */
export const placeInBox = (box: FrameBox, right: number, down: number): Place => {
  const [x, y] = alongBox(box.rotation, [(right * box.width) / 2, (down * box.height) / 2])
  return [box.middle[0] + x, box.middle[1] + y]
}

/** The outline of what a framing leaves open: the frame without its blanked parts. */
export const openOutline = (framing: Framing, aspect: number): readonly Place[] => {
  const box = frameBox(framing, aspect)
  const right = 1 - Math.max(-framing.blanking, 0)
  const down = 1 - Math.max(framing.blanking, 0)
  return Object.values(CORNERS).map(([x, y]) => placeInBox(box, x * right, y * down))
}

/** The outline of the whole delivered frame. */
export const frameOutline = (framing: Framing, aspect: number): readonly Place[] => {
  const box = frameBox(framing, aspect)
  return Object.values(CORNERS).map(([x, y]) => placeInBox(box, x, y))
}
