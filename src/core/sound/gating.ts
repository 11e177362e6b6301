/** Loudness of a mean square: −0.691 + 10 log10 (ITU-R BS.1770-4, Annex 1, equation 2). */
export const loudnessOf = (power: number): number => -0.691 + 10 * Math.log10(power)

const powerOf = (loudness: number): number => 10 ** ((loudness + 0.691) / 10)

/** Below this a block is silence (BS.1770-4, Annex 1, equation 5). */
const ABSOLUTE_GATE = -70

const mean = (powers: readonly number[]): number =>
  powers.reduce((sum, power) => sum + power, 0) / powers.length

const above = (powers: readonly number[], loudness: number): readonly number[] => {
  const gate = powerOf(loudness)
  return powers.filter((power) => power > gate)
}

/**
 * Integrated loudness in LUFS from the weighted mean squares of 400 ms blocks that overlap by
 * three quarters, gated at −70 and 10 LU below what is left (BS.1770-4, Annex 1); −∞ where all of
 * it is silence.
 */
export const integratedLoudness = (blocks: readonly number[]): number => {
  const heard = above(blocks, ABSOLUTE_GATE)
  if (heard.length === 0) return Number.NEGATIVE_INFINITY
  const kept = above(heard, loudnessOf(mean(heard)) - 10)
  return kept.length === 0 ? Number.NEGATIVE_INFINITY : loudnessOf(mean(kept))
}

/**
 * Loudness range in LU from the weighted mean squares of 3 s blocks: the 10th to the 95th
 * percentile of what is above −70 and above 20 LU below the mean of that (EBU Tech 3342, 2016,
 * §3); 0 where nothing is heard.
 */
export const loudnessRange = (blocks: readonly number[]): number => {
  const heard = above(blocks, ABSOLUTE_GATE)
  if (heard.length === 0) return 0
  const kept = above(heard, loudnessOf(mean(heard)) - 20).toSorted((a, b) => a - b)
  const at = (part: number): number => kept[Math.round(part * (kept.length - 1))] ?? 0
  return loudnessOf(at(0.95)) - loudnessOf(at(0.1))
}
