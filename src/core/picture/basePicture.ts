import { at } from '../base/assert.ts'
import { baseColour, type FilmBase, isPlainBase } from '../film/filmBase.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'

/** Every pixel through `baseColour`. */
export const basePicture = (picture: RgbPicture, base: FilmBase): RgbPicture => {
  if (isPlainBase(base)) return picture
  const out = rgbPicture(picture.width, picture.height)
  for (let i = 0; i < picture.r.length; i++) {
    const [r, g, b] = baseColour([at(picture.r, i), at(picture.g, i), at(picture.b, i)], base)
    out.r[i] = r
    out.g[i] = g
    out.b[i] = b
  }
  return out
}
