import { at } from '../base/assert.ts'
import type { WeightedColours } from '../census/weightedColours.ts'
import type { Limits } from '../tolerance/profile.ts'
import { fillSlopes, gradeInto, gradeSlopes } from './gradeSlopes.ts'
import { NUMBERS, PLACE } from './gradeVector.ts'

/** Parts of the pixels that are darker: a channel's shadows, middle and highlights. */
const PARTS = [0.05, 0.5, 0.95] as const

/** What part of a step between two of them stays, of what the limits leave room for: ours. */
const LEAST_KEPT = 0.5

/** And what part of saturation, or of 1 where it is more. */
const LEAST_SATURATION = 0.4

/** Steps of contrast, and saturation, that a grade must not fall below, in the form of straight limits. */
export type ContrastFloor = {
  /** The sum of the squares of what is missing. */
  readonly at: (vector: Float64Array) => number
  readonly rowsAt: (vector: Float64Array) => {
    readonly past: readonly number[]
    readonly slopes: readonly number[]
  }
}

const levelsOf = ({ colours, weights }: WeightedColours): Float64Array => {
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const levels = new Float64Array(PARTS.length * 3)
  for (let c = 0; c < 3; c++) {
    const order = Array.from(weights, (_, i) => i)
    order.sort((a, b) => at(colours, a * 3 + c) - at(colours, b * 3 + c))
    let sum = 0
    let part = 0
    for (const i of order) {
      sum += at(weights, i)
      while (part < PARTS.length && sum >= at(PARTS, part) * total)
        levels[3 * part++ + c] = at(colours, i * 3 + c)
    }
  }
  return levels
}

/**
 * Each channel's steps, before saturation, from its shadows to its middle and on to its highlights,
 * past black and peak too: a display shows nothing of a picture that is flat above peak, and yet it
 * can be brought inside as a picture. What must stay is a part of the present step, made smaller as
 * the limits make it. Of saturation a part stays likewise: grey is flat too.
 */
export const contrastFloor = (
  colours: WeightedColours,
  present: Float64Array,
  [low, high]: Limits,
): ContrastFloor => {
  const levels = levelsOf(colours)
  const unsaturated = (vector: Float64Array) => vector.with(PLACE.saturation, 1)
  const graded = gradeSlopes()
  const steps = new Float64Array((PARTS.length - 1) * 3)
  const fillSteps = (vector: Float64Array): void => {
    const plain = unsaturated(vector)
    const below = new Float64Array(3)
    for (let part = 0; part < PARTS.length; part++) {
      gradeInto(graded.out, levels, part * 3, plain)
      for (let c = 0; c < 3; c++) {
        if (part > 0) steps[(part - 1) * 3 + c] = at(graded.out, c) - at(below, c)
        below[c] = at(graded.out, c)
      }
    }
  }
  fillSteps(present)
  const before = Float64Array.from(steps)
  const room = [0, 1, 2].map((c) => (high - low) / Math.abs(at(before, c) + at(before, 3 + c)))
  const least = before.map((step, k) => LEAST_KEPT * Math.abs(step) * Math.min(1, at(room, k % 3)))
  const pale = LEAST_SATURATION * Math.min(1, at(present, PLACE.saturation))
  const sign = before.map((step) => (step < 0 ? -1 : 1))

  return {
    at: (vector) => {
      fillSteps(vector)
      return steps.reduce(
        (sum, step, k) => sum + Math.max(0, at(least, k) - step * at(sign, k)) ** 2,
        Math.max(0, pale - at(vector, PLACE.saturation)) ** 2,
      )
    },
    rowsAt: (vector) => {
      fillSteps(vector)
      const plain = unsaturated(vector)
      const bySlope = [0, 1, 2].map((part) => {
        fillSlopes(graded, levels, part * 3, plain)
        return Float64Array.from(graded.slopes)
      })
      const slopes = Array.from(steps).flatMap((_, k) => {
        const [part, c] = [Math.floor(k / 3), k % 3]
        return Array.from({ length: NUMBERS }, (_, p) =>
          p === PLACE.saturation
            ? 0
            : at(sign, k) *
              (at(at(bySlope, part), c * NUMBERS + p) - at(at(bySlope, part + 1), c * NUMBERS + p)),
        )
      })
      const past = Array.from(steps, (step, k) => at(least, k) - step * at(sign, k))
      const bySaturation = Array.from({ length: NUMBERS }, (_, p) =>
        p === PLACE.saturation ? -1 : 0,
      )
      return {
        past: [...past, pale - at(vector, PLACE.saturation)],
        slopes: [...slopes, ...bySaturation],
      }
    },
  }
}
