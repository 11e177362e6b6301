import { at } from '../base/assert.ts'
import { type Grade, gradeColour } from '../colour/grade.ts'
import { type RgbPicture, rgbPicture } from './rgbPicture.ts'

/** Every pixel through `gradeColour`. Unclipped. */
export const gradePicture = (picture: RgbPicture, grade: Grade): RgbPicture => {
  const out = rgbPicture(picture.width, picture.height)
  for (let i = 0; i < picture.r.length; i++) {
    const [r, g, b] = gradeColour([at(picture.r, i), at(picture.g, i), at(picture.b, i)], grade)
    out.r[i] = r
    out.g[i] = g
    out.b[i] = b
  }
  return out
}
