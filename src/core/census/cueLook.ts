/**
 * What a cue looks like, small enough to be kept for every cue of a long reel: how its pixels are
 * spread over levels and over colour, before the grade.
 */
export type CueLook = {
  readonly pixels: number
  /** Pixels with each of 64 levels of R′, G′, B′ and Y′: −8 % … 112 % in equal steps, ends included. */
  readonly levels: readonly [r: Float32Array, g: Float32Array, b: Float32Array, y: Float32Array]
  /** Parts of the pixels over coarse boxes of colour; adds up to 1. */
  readonly spread: Float32Array
}
