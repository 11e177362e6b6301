import { at } from '../base/assert.ts'
import type { WeightedColours } from '../census/weightedColours.ts'

/**
 * `count` colours (three numbers each) that stand for as many pixels each: the weighted colours at
 * equal steps through all pixels. There must be weight.
 */
export const evenColours = (
  { colours, weights }: WeightedColours,
  count: number,
): Float64Array<ArrayBuffer> => {
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  const even = new Float64Array(count * 3)
  let place = 0
  let passed = at(weights, 0)
  for (let k = 0; k < count; k++) {
    const wanted = ((k + 0.5) / count) * all
    while (passed < wanted && place < weights.length - 1) {
      place++
      passed += at(weights, place)
    }
    for (let c = 0; c < 3; c++) even[k * 3 + c] = at(colours, place * 3 + c)
  }
  return even
}
