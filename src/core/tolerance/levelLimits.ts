import type { Limits, ToleranceProfile } from './profile.ts'

/** What each figure is compared with; what a profile leaves free has endless limits. */
export type LevelLimits = {
  readonly rgb: Limits
  readonly luma: Limits
  readonly composite: Limits
}

/** A thousandth of a 10-bit code. */
const SLACK = 0.001 / 876

const widened = (limits: Limits | null): Limits =>
  limits ? [limits[0] - SLACK, limits[1] + SLACK] : [-Infinity, Infinity]

/**
 * The limits of a profile as levels are compared with them: below the first or above the second
 * is outside. The limits a profile states are inside, so a thousandth of a code is added to each:
 * a level that is just on one is not put past it by the rounding of a sum of floats.
 */
export const levelLimits = ({ rgb, luma, composite }: ToleranceProfile): LevelLimits => ({
  rgb: widened(rgb),
  luma: widened(luma),
  composite: widened(composite),
})
