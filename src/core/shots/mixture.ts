import { GRID_WIDTH } from './frameSignature.ts'
import type { PictureArea } from './pictureArea.ts'

/** How far a picture is a mixture of two others. */
export type Mixture = {
  /** Share of the second picture. */
  readonly share: number
  /** Part of the picture's contrast that the mixture leaves unexplained, 0…1. */
  readonly unexplained: number
  /** r² of the two pictures: 1 where they are one scene. */
  readonly alike: number
}

/** A picture and its two parts must be seen together in this part of the area. */
const LEAST_COMMON = 0.3

/** Two pictures more alike than this can't be told apart in a mixture. */
const MOST_ALIKE = 0.9

/**
 * The best mixture p·A + q·B + constant for a picture, by least squares over the cells where none
 * is NaN. The constant and the free scale take a flicker of the whole picture up.
 */
export const mixtureOf = (
  picture: Float32Array,
  a: Float32Array,
  b: Float32Array,
  area: PictureArea,
  rowStep = 1,
): Mixture | undefined => {
  let count = 0
  let sa = 0
  let sb = 0
  let sf = 0
  let aa = 0
  let bb = 0
  let ff = 0
  let ab = 0
  let fa = 0
  let fb = 0
  for (let y = area.top; y < area.bottom; y += rowStep)
    for (let i = y * GRID_WIDTH + area.left, end = y * GRID_WIDTH + area.right; i < end; i++) {
      const u = a[i] as number
      const v = b[i] as number
      if (!(u + v > -9)) continue
      const f = picture[i] as number
      count++
      sa += u
      sb += v
      sf += f
      aa += u * u
      bb += v * v
      ff += f * f
      ab += u * v
      fa += f * u
      fb += f * v
    }
  const cells = ((area.right - area.left) * (area.bottom - area.top)) / rowStep
  if (count < LEAST_COMMON * cells) return undefined
  aa -= (sa * sa) / count
  bb -= (sb * sb) / count
  ff -= (sf * sf) / count
  ab -= (sa * sb) / count
  fa -= (sf * sa) / count
  fb -= (sf * sb) / count
  const energy = aa * bb
  if (energy <= 0 || ff <= 0) return undefined
  const alike = ab > 0 ? (ab * ab) / energy : 0
  if (alike > MOST_ALIKE) return { share: 0.5, unexplained: 0, alike }
  const determinant = energy - ab * ab
  const p = (fa * bb - fb * ab) / determinant
  const q = (fb * aa - fa * ab) / determinant
  if (p + q <= 0.2) return undefined
  return {
    share: q / (p + q),
    unexplained: Math.max(0, ff - p * fa - q * fb) / ff,
    alike,
  }
}
