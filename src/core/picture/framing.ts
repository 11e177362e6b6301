/**
 * How a cue is framed for the delivered picture. `zoom` 1 shows the whole scanned picture, 2 its
 * middle half; `pan` and `tilt` move the view right and down, in fractions of the delivered width
 * and height.
 */
export type Framing = {
  readonly zoom: number
  readonly pan: number
  readonly tilt: number
}

export const IDENTITY_FRAMING: Framing = { zoom: 1, pan: 0, tilt: 0 }

export const sameFraming = (a: Framing, b: Framing): boolean =>
  a.zoom === b.zoom && a.pan === b.pan && a.tilt === b.tilt

export const mixFraming = (a: Framing, b: Framing, t: number): Framing => ({
  zoom: a.zoom + (b.zoom - a.zoom) * t,
  pan: a.pan + (b.pan - a.pan) * t,
  tilt: a.tilt + (b.tilt - a.tilt) * t,
})

/** From delivered pixel centres to scanned ones: scanned = scale·delivered + offset, in pixels. */
export type FramingMap = {
  readonly scale: number
  readonly offsetX: number
  readonly offsetY: number
}

/**
 * The map from a pixel of the delivered raster to a place on the scanned one, both
 * `width`×`height`, coordinates counted at pixel centres (0 = the middle of the first pixel).
 */
export const framingMap = (framing: Framing, width: number, height: number): FramingMap => {
  const scale = 1 / framing.zoom
  const origin = (size: number, shift: number) =>
    (size - size * scale) / 2 + shift * size * scale + 0.5 * scale - 0.5
  return {
    scale,
    offsetX: origin(width, framing.pan),
    offsetY: origin(height, framing.tilt),
  }
}
