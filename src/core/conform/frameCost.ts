import { correlation, type ReelLooks } from './reelLooks.ts'

/** Contrast, as signal, below which a frame shows nothing. */
export const BLANK_BELOW = 0.01

/** A match worse than this is none. */
const NO_MATCH = 0.2

/** Unlikeness that grain and the way of scanning leave anyhow. */
const NOISE_LEFT = 0.002

/** How unlike two frames without contrast count: a little less than no match. */
const BLANK = 0.18

/** Contrast, as signal, at which a picture counts half as one. */
const HALF_SEEN = 0.004

/** Two blank frames of levels this far apart are not alike: black and white. */
const LEVELS_APART = 0.35

/** Another scan may change contrast by this much, as a logarithm; what is past it costs a part. */
const CONTRAST_APART = 0.6
const CONTRAST_PART = 0.2

/** Contrast below this, as signal, is noise. */
const NOISE = 0.004

/**
 * How unlike a frame of one reel is a frame of another, 0 … 1 and more: 1 − their correlation, so
 * that level and contrast as such have no part in it. Frames without contrast tell nothing either
 * way, unless the other has some.
 */
export const unlikeness = (a: ReelLooks, m: number, b: ReelLooks, n: number): number => {
  const [one, other] = [a.deviations[m] as number, b.deviations[n] as number]
  const contrast = Math.min(one, other)
  const seen = contrast ** 2 / (contrast ** 2 + HALF_SEEN ** 2)
  const levels = Math.abs((a.means[m] as number) - (b.means[n] as number)) - LEVELS_APART
  const contrasts = Math.abs(Math.log((one + NOISE) / (other + NOISE))) - CONTRAST_APART
  return (
    seen * (1 - correlation(a, m, b, n)) +
    (1 - seen) * (BLANK + Math.max(0, levels)) +
    CONTRAST_PART * Math.max(0, contrasts)
  )
}

/**
 * What it costs to take one frame for another: the logarithm of what is left unexplained, as
 * against a match that is just none. 0 is what a frame costs that is found nowhere; −4.6 the least.
 */
export const frameCost = (a: ReelLooks, m: number, b: ReelLooks, n: number): number =>
  Math.log((unlikeness(a, m, b, n) + NOISE_LEFT) / (NO_MATCH + NOISE_LEFT))

/** How sure a mean cost makes a match, 0 … 1. */
export const sureness = (cost: number): number =>
  Math.min(1, Math.max(0, 1 - (Math.exp(cost) * (NO_MATCH + NOISE_LEFT) - NOISE_LEFT) / NO_MATCH))
