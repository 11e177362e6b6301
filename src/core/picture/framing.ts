/**
 * How a cue is framed for the delivered picture, whose raster is the scan's.
 *
 * `zoom` 1 shows the whole scanned picture, 2 its middle half. `pan` and `tilt` move the view right
 * and down, in parts of the delivered width and height. `rotation` turns the picture clockwise about
 * the middle of the view, in degrees. `squeeze` is how many times wider than scanned the picture is
 * shown: 2 for a common anamorphic print. `blanking` is the part of the height that is black, half
 * of it above and half below; below 0 it is of the width, at the sides.
 */
export type Framing = {
  readonly zoom: number
  readonly pan: number
  readonly tilt: number
  readonly rotation: number
  readonly squeeze: number
  readonly blanking: number
}

export const IDENTITY_FRAMING: Framing = {
  zoom: 1,
  pan: 0,
  tilt: 0,
  rotation: 0,
  squeeze: 1,
  blanking: 0,
}

const FIELDS = Object.keys(IDENTITY_FRAMING) as (keyof Framing)[]

export const sameFraming = (a: Framing, b: Framing): boolean =>
  FIELDS.every((field) => a[field] === b[field])

/** Whether the scan's pixels are delivered where and as they are, but for those that are blanked. */
export const isOnlyBlanked = (framing: Framing): boolean =>
  sameFraming({ ...framing, blanking: 0 }, IDENTITY_FRAMING)

export const mixFraming = (a: Framing, b: Framing, t: number): Framing => {
  const mix = (field: keyof Framing) => a[field] + (b[field] - a[field]) * t
  return {
    zoom: mix('zoom'),
    pan: mix('pan'),
    tilt: mix('tilt'),
    rotation: mix('rotation'),
    squeeze: mix('squeeze'),
    blanking: mix('blanking'),
  }
}

/** Columns `left` up to `right` and rows `top` up to `bottom`. */
export type PixelWindow = {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/**
 * From delivered pixel centres to scanned ones, in pixels (0 = the middle of the first pixel):
 * column = xx·x + xy·y + offsetX, row = yx·x + yy·y + offsetY.
 */
export type FramingMap = {
  readonly xx: number
  readonly xy: number
  readonly yx: number
  readonly yy: number
  readonly offsetX: number
  readonly offsetY: number
  /** The delivered pixels that are not blanked. */
  readonly open: PixelWindow
}

/** Pixels whose middle is in the middle part of `size` that is not blanked. */
const openOf = (size: number, blanked: number): readonly [from: number, to: number] => {
  const edge = (size * Math.min(Math.max(blanked, 0), 1)) / 2
  const from = Math.max(0, Math.ceil(edge - 0.5))
  return [from, Math.max(from, Math.floor(size - edge - 0.5) + 1)]
}

/**
 * The map of a framing where both rasters are `width`×`height`, pixels `pixelAspect` times as wide
 * as they are high: turning keeps shapes as they are shown.
 */
export const framingMap = (
  { zoom, pan, tilt, rotation, squeeze, blanking }: Framing,
  width: number,
  height: number,
  pixelAspect = 1,
): FramingMap => {
  const angle = (rotation * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const [x, y] = [1 / (zoom * squeeze), 1 / zoom]
  const [xx, xy, yx, yy] = [cos * x, (sin * y) / pixelAspect, -sin * x * pixelAspect, cos * y]
  const [middleX, middleY] = [(width - 1) / 2, (height - 1) / 2]
  const [fromX, fromY] = [pan * width - middleX, tilt * height - middleY]
  const [left, right] = openOf(width, -blanking)
  const [top, bottom] = openOf(height, blanking)
  return {
    xx,
    xy,
    yx,
    yy,
    offsetX: middleX + xx * fromX + xy * fromY,
    offsetY: middleY + yx * fromX + yy * fromY,
    open: { left, right, top, bottom },
  }
}

/** Whether each delivered row and column lies along a scanned one: nothing is turned. */
export const isUpright = ({ xy, yx }: FramingMap): boolean => xy === 0 && yx === 0

/** Whether a delivered pixel is not blanked. */
export const isOpen = ({ open }: FramingMap, x: number, y: number): boolean =>
  x >= open.left && x < open.right && y >= open.top && y < open.bottom

/** The four corners of what a framing shows of the scan, in scanned pixels from its corner. */
export const framingOutline = (
  framing: Framing,
  width: number,
  height: number,
): readonly (readonly [x: number, y: number])[] => {
  const { xx, xy, yx, yy, offsetX, offsetY } = framingMap(framing, width, height)
  const blanked = { x: Math.max(-framing.blanking, 0) / 2, y: Math.max(framing.blanking, 0) / 2 }
  const [left, right] = [blanked.x * width - 0.5, (1 - blanked.x) * width - 0.5]
  const [top, bottom] = [blanked.y * height - 0.5, (1 - blanked.y) * height - 0.5]
  const place = (x: number, y: number) =>
    [xx * x + xy * y + offsetX + 0.5, yx * x + yy * y + offsetY + 0.5] as const
  return [place(left, top), place(right, top), place(right, bottom), place(left, bottom)]
}
