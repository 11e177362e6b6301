import { SATURATION_WEIGHTS } from '../colour/grade.ts'
import type { Triple } from '../colour/triple.ts'

const [KR, KG, KB] = SATURATION_WEIGHTS

/** R′, G′, B′, luma, and what each channel has past luma. */
const AXES: readonly Triple[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
  [KR, KG, KB],
  [1 - KR, -KG, -KB],
  [-KR, 1 - KG, -KB],
  [-KR, -KG, 1 - KB],
]
const LUMA = 3

/** Steps from the lowest quantile to the highest. */
const STEPS = 40

/** Part of the pixels left out at either end: what glints and holes make of it says little. */
const TRIM = 0.02

/** How many numbers `levelQuantiles` gives. */
export const QUANTILES = AXES.length * STEPS

/**
 * How the levels of colours (R′G′B′, each of one weight) are spread: for each channel, for luma and
 * for each channel less luma the levels that 2 % to 98 % of them lie under. Written into `into`,
 * which has QUANTILES places.
 */
export const levelQuantiles = (colours: Float64Array, into: Float64Array): void => {
  const count = colours.length / 3
  const levels = new Float64Array(count)
  for (const [a, [r, g, b]] of AXES.entries()) {
    for (let i = 0; i < count; i++)
      levels[i] =
        r * (colours[i * 3] as number) +
        g * (colours[i * 3 + 1] as number) +
        b * (colours[i * 3 + 2] as number)
    levels.sort()
    for (let k = 0; k < STEPS; k++) {
      const place = (TRIM + ((1 - 2 * TRIM) * k) / (STEPS - 1)) * (count - 1)
      const before = Math.floor(place)
      const low = levels[before] as number
      const high = levels[Math.min(before + 1, count - 1)] as number
      into[a * STEPS + k] = low + (place - before) * (high - low)
    }
  }
}

/** From the lowest luma to the highest of such quantiles. */
export const lumaSpan = (quantiles: Float64Array): number =>
  (quantiles[(LUMA + 1) * STEPS - 1] as number) - (quantiles[LUMA * STEPS] as number)
