import type { FrameSignature } from './frameSignature.ts'

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
 * The best mixture p·A + q·B + constant for a frame, by least squares over the luma grid. The
 * constant and the free scale take a flicker of the whole picture up.
 */
export const mixtureOf = (
  frame: FrameSignature,
  a: FrameSignature,
  b: FrameSignature,
): Mixture | undefined => {
  let aa = 0
  let bb = 0
  let ab = 0
  let fa = 0
  let fb = 0
  let ff = 0
  for (let i = 0; i < frame.luma.length; i++) {
    const x = (a.luma[i] as number) - a.mean
    const y = (b.luma[i] as number) - b.mean
    const f = (frame.luma[i] as number) - frame.mean
    aa += x * x
    bb += y * y
    ab += x * y
    fa += f * x
    fb += f * y
    ff += f * f
  }
  const determinant = aa * bb - ab * ab
  if (determinant < LEAST_DISTINCT * aa * bb || ff === 0) return undefined
  const p = (fa * bb - fb * ab) / determinant
  const q = (fb * aa - fa * ab) / determinant
  if (p + q <= 0) return undefined
  const left = ff - p * fa - q * fb
  return { share: q / (p + q), unexplained: Math.max(0, left) / ff }
}
