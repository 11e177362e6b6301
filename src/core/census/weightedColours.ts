/** Colours and how many samples have each. R′G′B′ before the grade, 0 black and 1 peak, unclipped. */
export type WeightedColours = {
  /** r, g, b of each colour, one after another. */
  readonly rgb: Float64Array
  /** Samples of each colour, above 0. */
  readonly weights: Float64Array
}
