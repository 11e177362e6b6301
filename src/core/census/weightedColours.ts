import { at } from '../base/assert.ts'
import type { CensusData } from './censusData.ts'
import { fewerColours } from './fewerColours.ts'
import { keyBoxes } from './keyBoxes.ts'

/** Some colours, R′G′B′ before the grade (three numbers each), and how many pixels each stands for. */
export type WeightedColours = {
  readonly colours: Float64Array
  readonly weights: Float64Array
}

/**
 * A census in at most `most` colours, for what needs means over a cue and not its extremes: each is
 * the mean of a run of colours that lie near each other (the middle of a key's box where keys are
 * boxes), and all weights add up to the census's pixels.
 */
export const weightedColours = (
  { keys, counts, shape, coding }: CensusData,
  most = 4096,
): WeightedColours => {
  const boxOf = keyBoxes(shape, coding)
  const colours = new Float64Array(keys.length * 3)
  for (let i = 0; i < keys.length; i++) {
    const { low, high } = boxOf(at(keys, i))
    for (const c of [0, 1, 2] as const) colours[i * 3 + c] = (low[c] + high[c]) / 2
  }
  return fewerColours({ colours, weights: Float64Array.from(counts) }, most)
}
