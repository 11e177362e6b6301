import { at } from '../base/assert.ts'
import { type RgbPicture, rgbPicture } from '../picture/rgbPicture.ts'
import { limitColour } from './limitColour.ts'
import type { Limiter } from './limiter.ts'

/** A pixel is counted as limited where R′, G′ or B′ moved by more: a quarter of a 10-bit code. */
export const LEAST_MOVE = 0.25 / 876

/** A limited picture, and how many of its pixels have a level that was moved by `LEAST_MOVE`. */
export type LimitedPicture = { readonly picture: RgbPicture; readonly limited: number }

/** Every pixel through `limitColour`. */
export const limitPicture = (
  { width, height, r, g, b }: RgbPicture,
  limiter: Limiter,
): LimitedPicture => {
  const picture = rgbPicture(width, height)
  let limited = 0
  for (let i = 0; i < r.length; i++) {
    const rgb = [at(r, i), at(g, i), at(b, i)] as const
    const out = limitColour(rgb, limiter)
    picture.r[i] = out[0]
    picture.g[i] = out[1]
    picture.b[i] = out[2]
    if (rgb.some((level, c) => Math.abs(at(out, c) - level) > LEAST_MOVE)) limited++
  }
  return { picture, limited }
}
