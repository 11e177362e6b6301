import { at } from '../base/assert.ts'
import { type Framing, framingMap, IDENTITY_FRAMING, sameFraming } from './framing.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'

/**
 * The delivered picture: each pixel read from the graded one at its place under `framing`, by
 * linear interpolation between the four nearest pixels. Where the view leaves the scanned picture
 * it is black (0).
 */
export const framePicture = (picture: RgbPicture, framing: Framing): RgbPicture => {
  if (sameFraming(framing, IDENTITY_FRAMING)) return picture
  const { width, height } = picture
  const { scale, offsetX, offsetY } = framingMap(framing, width, height)
  const out = rgbPicture(width, height)
  for (let y = 0; y < height; y++) {
    const sy = y * scale + offsetY
    if (sy < -0.5 || sy > height - 0.5) continue
    const y0 = Math.floor(sy)
    const top = Math.max(y0, 0) * width
    const bottom = Math.min(y0 + 1, height - 1) * width
    const fy = sy - y0
    for (let x = 0; x < width; x++) {
      const sx = x * scale + offsetX
      if (sx < -0.5 || sx > width - 0.5) continue
      const x0 = Math.floor(sx)
      const left = Math.max(x0, 0)
      const right = Math.min(x0 + 1, width - 1)
      const fx = sx - x0
      const mix = (plane: Float64Array): number =>
        (at(plane, top + left) * (1 - fx) + at(plane, top + right) * fx) * (1 - fy) +
        (at(plane, bottom + left) * (1 - fx) + at(plane, bottom + right) * fx) * fy
      const i = y * width + x
      out.r[i] = mix(picture.r)
      out.g[i] = mix(picture.g)
      out.b[i] = mix(picture.b)
    }
  }
  return out
}
