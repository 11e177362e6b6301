import type { FrameWindow } from './frameWindow.ts'

/** How far a frame is a mixture of two others. */
export type Mixture = {
  /** The share of the second picture, 0 … 1 for a mixture. */
  readonly share: number
  /** The part of the frame's contrast that no mixture of the two explains, 0 … 1. */
  readonly unexplained: number
}

/** Two pictures more alike than this (1 − r²) are one scene: nothing can be told apart in them. */
const LEAST_DISTINCT = 0.12

/**
 * The best mixture p·A + q·B + constant for frame `n` of frames `a` and `b`, by least squares over
 * the luma grid. The constant and the free scale take a flicker of the whole picture up.
 */
export const mixtureOf = (
  window: FrameWindow,
  n: number,
  a: number,
  b: number,
): Mixture | undefined => {
  const [frame, one, other] = [window.at(n), window.at(a), window.at(b)]
  if (!frame || !one || !other) return undefined
  const aa = one.deviation ** 2
  const bb = other.deviation ** 2
  const ff = frame.deviation ** 2
  const ab = window.covariance(a, b)
  const determinant = aa * bb - ab * ab
  if (determinant < LEAST_DISTINCT * aa * bb || ff === 0) return undefined
  const fa = window.covariance(a, n)
  const fb = window.covariance(n, b)
  const p = (fa * bb - fb * ab) / determinant
  const q = (fb * aa - fa * ab) / determinant
  if (p + q <= 0) return undefined
  return { share: q / (p + q), unexplained: Math.max(0, ff - p * fa - q * fb) / ff }
}
