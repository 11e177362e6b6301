import { at } from '../base/assert.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { MatrixName } from '../picture/planes.ts'
import type { RgbPicture } from '../picture/rgbPicture.ts'
import { compositePeaks } from './compositePeaks.ts'
import { levelLimits } from './levelLimits.ts'
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
  /** Lowest and highest peaks of the composite signal, where the profile limits them. */
  readonly composite?: Extremes
  /** Pixels with any of these below or above its limits, and all pixels. */
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
 * profile's filter where it has one, unquantised. Composite peaks are those of the filtered R′, G′, B′.
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
  const limits = levelLimits(profile)
  let composite: Extremes = { low: Infinity, high: -Infinity }
  let below = 0
  let above = 0
  let outside = 0
  for (let i = 0; i < y.length; i++) {
    const [red, green, blue] = [at(r, i), at(g, i), at(b, i)]
    let isBelow = Math.min(red, green, blue) < limits.rgb[0] || at(y, i) < limits.luma[0]
    let isAbove = Math.max(red, green, blue) > limits.rgb[1] || at(y, i) > limits.luma[1]
    if (profile.composite) {
      const [low, high] = compositePeaks(red, green, blue)
      composite = { low: Math.min(composite.low, low), high: Math.max(composite.high, high) }
      isBelow ||= low < limits.composite[0]
      isAbove ||= high > limits.composite[1]
    }
    if (isBelow) below++
    if (isAbove) above++
    if (isBelow || isAbove) outside++
  }
  return {
    r: extremes(r),
    g: extremes(g),
    b: extremes(b),
    y: extremes(y),
    ...(profile.composite && { composite }),
    below,
    above,
    outside,
    pixels: width * height,
  }
}
