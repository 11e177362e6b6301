import { at } from '../base/assert.ts'
import type { CensusData } from './censusData.ts'
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
export const weightedColours = (census: CensusData, most = 4096): WeightedColours => {
  const { keys, counts, shape, coding } = census
  const boxOf = keyBoxes(shape, coding)
  const run = Math.max(1, Math.ceil(keys.length / most))
  const count = Math.ceil(keys.length / run)
  const colours = new Float64Array(count * 3)
  const weights = new Float64Array(count)
  for (let i = 0; i < keys.length; i++) {
    const place = Math.floor(i / run)
    const weight = at(counts, i)
    const { low, high } = boxOf(at(keys, i))
    const before = at(weights, place)
    const share = weight / (before + weight)
    weights[place] = before + weight
    for (const c of [0, 1, 2] as const) {
      const mean = at(colours, place * 3 + c)
      colours[place * 3 + c] = mean + share * ((low[c] + high[c]) / 2 - mean)
    }
  }
  return { colours, weights }
}
