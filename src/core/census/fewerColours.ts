import type { WeightedColours } from './weightedColours.ts'

/** At most `most` colours: the means of runs of colours, each with the weight of its run. */
export const fewerColours = (
  { colours, weights }: WeightedColours,
  most: number,
): WeightedColours => {
  const run = Math.max(1, Math.ceil(weights.length / most))
  const count = Math.ceil(weights.length / run)
  const fewer = { colours: new Float64Array(count * 3), weights: new Float64Array(count) }
  for (let i = 0; i < weights.length; i++) {
    const place = Math.floor(i / run)
    const weight = weights[i] as number
    const before = fewer.weights[place] as number
    fewer.weights[place] = before + weight
    const share = weight / (before + weight)
    for (let c = 0; c < 3; c++) {
      const mean = fewer.colours[place * 3 + c] as number
      fewer.colours[place * 3 + c] = mean + share * ((colours[i * 3 + c] as number) - mean)
    }
  }
  return fewer
}
