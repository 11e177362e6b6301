import { at } from '../base/assert.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { MatrixName } from '../picture/planes.ts'
import type { RgbPicture } from '../picture/rgbPicture.ts'
import type { ToleranceProfile } from './profile.ts'
import { r103Filter } from './r103Filter.ts'

/** Lowest and highest level met. */
export type Extremes = { readonly low: number; readonly high: number }

/** What one delivered picture measures against a profile. Levels are signal (0 black, 1 peak). */
export type PictureLevels = {
  readonly r: Extremes
  readonly g: Extremes
  readonly b: Extremes
  readonly y: Extremes
  /** Pixels with any of R′, G′, B′, Y′ below or above its limits, and all pixels. */
  readonly below: number
  readonly above: number
  /** Pixels outside in either direction (one below in R′ and above in B′ counts once). */
  readonly outside: number
  readonly pixels: number
}

const extremes = (plane: Float64Array): Extremes => {
  let low = Infinity
  let high = -Infinity
  for (const value of plane) {
    if (value < low) low = value
    if (value > high) high = value
  }
  return { low, high }
}

/**
 * The levels of a delivered picture: R′, G′, B′ and Y′ (by the target's `matrix`), each after the
 * profile's filter where it has one, unquantised.
 */
export const pictureLevels = (
  picture: RgbPicture,
  matrix: MatrixName,
  profile: ToleranceProfile,
): PictureLevels => {
  const { width, height } = picture
  const filter = (plane: Float64Array) =>
    profile.filtered ? r103Filter(plane, width, height) : plane
  const r = filter(picture.r)
  const g = filter(picture.g)
  const b = filter(picture.b)
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const y = r.map((value, i) => kr * value + kg * at(g, i) + kb * at(b, i))
  let below = 0
  let above = 0
  let outside = 0
  for (let i = 0; i < y.length; i++) {
    const low = Math.min(at(r, i), at(g, i), at(b, i))
    const high = Math.max(at(r, i), at(g, i), at(b, i))
    const isBelow = low < profile.rgb[0] || at(y, i) < profile.luma[0]
    const isAbove = high > profile.rgb[1] || at(y, i) > profile.luma[1]
    if (isBelow) below++
    if (isAbove) above++
    if (isBelow || isAbove) outside++
  }
  return {
    r: extremes(r),
    g: extremes(g),
    b: extremes(b),
    y: extremes(y),
    below,
    above,
    outside,
    pixels: width * height,
  }
}
