import { at } from '../base/assert.ts'
import { type Framing, framingMap, IDENTITY_FRAMING, sameFraming } from './framing.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'

/**
 * The delivered picture: each pixel read from the graded one at its place under `framing`, by
 * linear interpolation between the four nearest pixels. Where it is blanked and where the view
 * leaves the scanned picture it is black (0). `pixelAspect`: width of a pixel over its height.
 */
export const framePicture = (
  picture: RgbPicture,
  framing: Framing,
  pixelAspect = 1,
): RgbPicture => {
  if (sameFraming(framing, IDENTITY_FRAMING)) return picture
  const { width, height } = picture
  const { xx, xy, yx, yy, offsetX, offsetY, open } = framingMap(framing, width, height, pixelAspect)
  const out = rgbPicture(width, height)
  for (let y = open.top; y < open.bottom; y++)
    for (let x = open.left; x < open.right; x++) {
      const sx = xx * x + xy * y + offsetX
      const sy = yx * x + yy * y + offsetY
      if (sx < -0.5 || sx > width - 0.5 || sy < -0.5 || sy > height - 0.5) continue
      const [x0, y0] = [Math.floor(sx), Math.floor(sy)]
      const [fx, fy] = [sx - x0, sy - y0]
      const left = Math.max(x0, 0)
      const right = Math.min(x0 + 1, width - 1)
      const top = Math.max(y0, 0) * width
      const bottom = Math.min(y0 + 1, height - 1) * width
      const mix = (plane: Float64Array): number =>
        (at(plane, top + left) * (1 - fx) + at(plane, top + right) * fx) * (1 - fy) +
        (at(plane, bottom + left) * (1 - fx) + at(plane, bottom + right) * fx) * fy
      const i = y * width + x
      out.r[i] = mix(picture.r)
      out.g[i] = mix(picture.g)
      out.b[i] = mix(picture.b)
    }
  return out
}
