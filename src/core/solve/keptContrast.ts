import type { WeightedColours } from '../census/weightedColours.ts'
import { displayedRgbToLab } from '../colour/cieLab.ts'
import { gradeInto } from './gradeSlopes.ts'

/** The deviation of L* as a display shows the colours. */
const contrastOf = ({ colours, weights }: WeightedColours, vector: Float64Array): number => {
  const out = new Float64Array(3)
  let total = 0
  let sum = 0
  let squares = 0
  for (let i = 0; i < weights.length; i++) {
    gradeInto(out, colours, i * 3, vector)
    const [light] = displayedRgbToLab([out[0] as number, out[1] as number, out[2] as number])
    const weight = weights[i] as number
    total += weight
    sum += weight * light
    squares += weight * light * light
  }
  return Math.sqrt(Math.max(0, squares / total - (sum / total) ** 2))
}

/** A deviation of L* so small that losing it loses nothing. */
const NOTHING = 0.5

/** What part of the contrast that a display shows is left by a grade: 1 where there was none. */
export const keptContrast = (
  colours: WeightedColours,
  present: Float64Array,
  vector: Float64Array,
): number => {
  const before = contrastOf(colours, present)
  return before < NOTHING ? 1 : contrastOf(colours, vector) / before
}
