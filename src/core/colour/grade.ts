import { sameTriple, type Triple, triple } from './triple.ts'

/**
 * A cue's grade on non-linear R′G′B′. `lift` is the black level and `gain` the peak white, each a
 * signal level (0 black, 1 peak); `gamma` > 0 brightens above 1; `saturation` ≥ 0.
 */
export type Grade = {
  readonly lift: Triple
  readonly gamma: Triple
  readonly gain: Triple
  readonly saturation: number
}

export const IDENTITY_GRADE: Grade = {
  lift: triple(0),
  gamma: triple(1),
  gain: triple(1),
  saturation: 1,
}

export const sameGrade = (a: Grade, b: Grade): boolean =>
  sameTriple(a.lift, b.lift) &&
  sameTriple(a.gamma, b.gamma) &&
  sameTriple(a.gain, b.gain) &&
  a.saturation === b.saturation

/**
 * No power of a level goes past this (no signal comes near it): with any numbers a job may hold,
 * levels and sums of them stay finite.
 */
export const HIGHEST_LEVEL = 2 ** 30

/** One channel of the grade: v = lift + (gain − lift)·x, then v^(1/gamma) where v > 0. */
export const gradeChannel = (x: number, lift: number, gamma: number, gain: number): number => {
  const v = lift + (gain - lift) * x
  return v > 0 ? Math.min(v ** (1 / gamma), HIGHEST_LEVEL) : v
}

/**
 * Luma weights of the saturation stage: those of BT.709 whatever the picture's matrix, as the
 * ASC CDL v1.2 prescribes.
 */
export const SATURATION_WEIGHTS: Triple = [0.2126, 0.7152, 0.0722]

/** out = Y + s·(in − Y), per channel (ASC CDL v1.2, no clamp). */
export const saturate = ([r, g, b]: Triple, saturation: number): Triple => {
  const [wr, wg, wb] = SATURATION_WEIGHTS
  const y = wr * r + wg * g + wb * b
  return [y + saturation * (r - y), y + saturation * (g - y), y + saturation * (b - y)]
}

/** A colour through lift, gamma, gain and saturation, unclipped. R′G′B′ in and out. */
export const gradeColour = (rgb: Triple, { lift, gamma, gain, saturation }: Grade): Triple =>
  saturate(
    [
      gradeChannel(rgb[0], lift[0], gamma[0], gain[0]),
      gradeChannel(rgb[1], lift[1], gamma[1], gain[1]),
      gradeChannel(rgb[2], lift[2], gamma[2], gain[2]),
    ],
    saturation,
  )

const mix = (a: number, b: number, t: number): number => (t <= 0 ? a : t >= 1 ? b : a + (b - a) * t)

const mixTriple = (a: Triple, b: Triple, t: number): Triple => [
  mix(a[0], b[0], t),
  mix(a[1], b[1], t),
  mix(a[2], b[2], t),
]

/** The grade a fraction `t` (0…1) of the way from `a` to `b`, number by number: what a ramp does. */
export const mixGrade = (a: Grade, b: Grade, t: number): Grade => ({
  lift: mixTriple(a.lift, b.lift, t),
  gamma: mixTriple(a.gamma, b.gamma, t),
  gain: mixTriple(a.gain, b.gain, t),
  saturation: mix(a.saturation, b.saturation, t),
})
