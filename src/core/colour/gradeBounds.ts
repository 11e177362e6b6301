/**
 * How far a solver goes with the numbers of a grade, lift and gain as signal: a choice of this
 * project, what the bench's fields offer. Past them a picture is beyond repair by a grade.
 */
export const GRADE_BOUNDS = {
  lift: [-1, 1],
  gamma: [0.1, 5],
  gain: [-1, 4],
  saturation: [0, 4],
} as const

/** Gain less lift, at least: below it a channel is as good as flat. */
export const LEAST_SLOPE = 0.001
