/** A ratio that pictures are blanked to, by the name it goes by. */
export type BlankingRatio = { readonly name: string; readonly ratio: number }

/**
 * Width over height. 1.33 is 4 : 3 and 1.78 is 16 : 9 exactly; 1.66, 1.85 and 2.39 are the
 * projected ratios as they are named (facts/film.md §6).
 */
export const BLANKING_RATIOS: readonly BlankingRatio[] = [
  { name: '1.33', ratio: 4 / 3 },
  { name: '1.66', ratio: 1.66 },
  { name: '1.78', ratio: 16 / 9 },
  { name: '1.85', ratio: 1.85 },
  { name: '2.39', ratio: 2.39 },
]

/** Width over height of what blanking leaves open in a delivered picture of shape `aspect`. */
export const openRatio = (blanking: number, aspect: number): number =>
  blanking >= 0 ? aspect / (1 - blanking) : aspect * (1 + blanking)

/**
 * The blanking that leaves a `ratio` open: above and below where it is wider than the delivered
 * picture, at the sides where it is narrower. The inverse of `openRatio`.
 */
export const blankingFor = (ratio: number, aspect: number): number =>
  ratio >= aspect ? 1 - aspect / ratio : ratio / aspect - 1

/** Ratios this near are the same one as a colourist names it; a line of 1080 is about 0.002. */
const SAME_RATIO = 0.002

/** The named ratio that blanking leaves open; undefined when it is another. */
export const namedRatio = (blanking: number, aspect: number): BlankingRatio | undefined =>
  BLANKING_RATIOS.find(({ ratio }) => Math.abs(ratio - openRatio(blanking, aspect)) < SAME_RATIO)
