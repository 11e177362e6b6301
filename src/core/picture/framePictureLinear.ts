import { at } from '../base/assert.ts'
import { type Framing, framingMap, IDENTITY_FRAMING, sameFraming } from './framing.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'
import { seenPlaces } from './seenPlaces.ts'

/**
 * `framePicture` by linear interpolation between the four nearest pixels: what the preview draws, as
 * weak graphics need it, and is held to. Nothing that is measured, transferred or saved goes by it.
 */
export const framePictureLinear = (
  picture: RgbPicture,
  framing: Framing,
  pixelAspect = 1,
): RgbPicture => {
  if (sameFraming(framing, IDENTITY_FRAMING)) return picture
  const { width, height } = picture
  const out = rgbPicture(width, height)
  seenPlaces(framingMap(framing, width, height, pixelAspect), width, height, (pixel, sx, sy) => {
    const [x0, y0] = [Math.floor(sx), Math.floor(sy)]
    const [fx, fy] = [sx - x0, sy - y0]
    const left = Math.max(x0, 0)
    const right = Math.min(x0 + 1, width - 1)
    const top = Math.max(y0, 0) * width
    const bottom = Math.min(y0 + 1, height - 1) * width
    const mix = (plane: Float64Array): number =>
      (at(plane, top + left) * (1 - fx) + at(plane, top + right) * fx) * (1 - fy) +
      (at(plane, bottom + left) * (1 - fx) + at(plane, bottom + right) * fx) * fy
    out.r[pixel] = mix(picture.r)
    out.g[pixel] = mix(picture.g)
    out.b[pixel] = mix(picture.b)
  })
  return out
}
