/**
 * What a cue looks like, small enough to be kept for every cue of a long reel: how its pixels are
 * spread over levels and over colour, before the grade.
 */
export type CueLook = {
  readonly pixels: number
  /** Pixels with each of 64 levels of R′, G′, B′ and Y′: −8 % … 112 % in equal steps, ends included. */
  readonly levels: LookLevels
  /**
   * Parts of the pixels over coarse boxes of colour, adding up to 1: 8 of luma (slowest), 8 of Cb,
   * 8 of Cr (fastest).
   */
  readonly spread: Float32Array
}

export type LookLevels = readonly [
  r: Float32Array,
  g: Float32Array,
  b: Float32Array,
  y: Float32Array,
]

export const LOOK_LEVELS = 64

/** The signal at the lower end of the first level, and at the upper end of the last. */
export const LOOK_SPAN = [-0.08, 1.12] as const

/** Boxes of colour along each of luma, Cb and Cr. */
export const LOOK_SIDE = 8
