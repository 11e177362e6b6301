import type { WeightedColours } from '../census/weightedColours.ts'
import { displayedRgbToLab, type Lab } from '../colour/cieLab.ts'
import { deltaE2000 } from '../colour/deltaE2000.ts'
import { fillSlopes, gradeInto, gradeSlopes } from './gradeSlopes.ts'
import { NUMBERS } from './gradeVector.ts'
import { addResidual, type NormalSums } from './normalSums.ts'

/**
 * ΔE of a whole signal (0…1) that no display shows, between peak or black and the limits: enough
 * that detail there is kept where keeping it costs nothing that is seen. A choice of this project.
 */
const HIDDEN_WEIGHT = 4

/**
 * ΔE that a number of the grade costs by the square of its change: so little that it decides only
 * between grades that look alike, where it takes the smaller numbers. A choice of this project.
 */
const EFFORT = 0.03

/** Differences below this count by their square, so that the sum is smooth where all are 0. */
const SOFT = 0.03

const SIGNAL_STEP = 1e-4
const LAB_STEP = 0.02

/** What there is of a level past black or peak, up to the limits: signal that displays clip. */
const hiddenPart = (level: number, low: number, high: number): number =>
  level > 1 ? Math.min(level, high) - 1 : level < 0 ? Math.max(level, low) : 0

/** Half the curvature of ΔE00² about a colour: six numbers of a symmetric 3 × 3 (LL La Lb aa ab bb). */
const curvatureAt = (lab: Lab, into: Float64Array, place: number): void => {
  const squareOf = (l: number, a: number, b: number) =>
    deltaE2000(lab, [lab[0] + l * LAB_STEP, lab[1] + a * LAB_STEP, lab[2] + b * LAB_STEP]) ** 2
  const l = squareOf(1, 0, 0)
  const a = squareOf(0, 1, 0)
  const b = squareOf(0, 0, 1)
  const unit = LAB_STEP ** 2
  into.set(
    [
      l / unit,
      (squareOf(1, 1, 0) - l - a) / (2 * unit),
      (squareOf(1, 0, 1) - l - b) / (2 * unit),
      a / unit,
      (squareOf(0, 1, 1) - a - b) / (2 * unit),
      b / unit,
    ],
    place,
  )
}

/** How much a grade changes colours, against the present one. */
export type GradeCost = {
  /** Mean ΔE00 as a display shows the colours. */
  readonly shownAt: (vector: Float64Array) => number
  /**
   * What is to be least: the mean with each colour's change of hidden signal (the root of both
   * squares), and a little for the change of the numbers.
   */
  readonly costAt: (vector: Float64Array) => number
  /** Adds half the slope of the cost and of its curvature, for a step of Gauss and Newton. */
  readonly addNormal: (vector: Float64Array, sums: NormalSums) => void
}

/** `low` and `high`: the limits of R′, G′, B′ up to which signal beyond black and peak counts. */
export const gradeCost = (
  { colours, weights }: WeightedColours,
  present: Float64Array,
  low: number,
  high: number,
): GradeCost => {
  const count = weights.length
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const labs: Lab[] = []
  const hidden = new Float64Array(count * 3)
  const curvatures = new Float64Array(count * 6)
  const out = new Float64Array(3)
  for (let i = 0; i < count; i++) {
    gradeInto(out, colours, i * 3, present)
    const lab = displayedRgbToLab([out[0] as number, out[1] as number, out[2] as number])
    labs.push(lab)
    curvatureAt(lab, curvatures, i * 6)
    for (let c = 0; c < 3; c++) hidden[i * 3 + c] = hiddenPart(out[c] as number, low, high)
  }
  const hiddenChange = (i: number, c: number): number =>
    HIDDEN_WEIGHT * (hiddenPart(out[c] as number, low, high) - (hidden[i * 3 + c] as number))
  const shownSquare = (i: number, r: number, g: number, b: number): number =>
    deltaE2000(labs[i] as Lab, displayedRgbToLab([r, g, b])) ** 2

  const meanOf = (vector: Float64Array, isShownOnly: boolean): number => {
    let sum = 0
    for (let i = 0; i < count; i++) {
      gradeInto(out, colours, i * 3, vector)
      let square = shownSquare(i, out[0] as number, out[1] as number, out[2] as number)
      if (!isShownOnly) {
        for (let c = 0; c < 3; c++) square += hiddenChange(i, c) ** 2
        square += SOFT * SOFT
      }
      sum += (weights[i] as number) * (Math.sqrt(square) - (isShownOnly ? 0 : SOFT))
    }
    if (isShownOnly) return sum / total
    let effort = 0
    for (let p = 0; p < NUMBERS; p++)
      effort += ((vector[p] as number) - (present[p] as number)) ** 2
    return sum / total + EFFORT * effort
  }

  const graded = gradeSlopes()
  const row = new Float64Array(NUMBERS)
  const byLab = new Float64Array(9)
  const pulls = new Float64Array(3)
  const square = new Float64Array(9)
  const moved = new Float64Array(3)
  /** L*, a*, b* and ΔE00² by each channel, by differences. */
  const fillShown = (i: number, shown: number): void => {
    const here = displayedRgbToLab([
      graded.out[0] as number,
      graded.out[1] as number,
      graded.out[2] as number,
    ])
    for (let c = 0; c < 3; c++) {
      moved.set(graded.out)
      const by = (moved[c] as number) > 0.5 ? -SIGNAL_STEP : SIGNAL_STEP
      moved[c] = (moved[c] as number) + by
      const there = displayedRgbToLab([moved[0] as number, moved[1] as number, moved[2] as number])
      byLab[c] = (there[0] - here[0]) / by
      byLab[3 + c] = (there[1] - here[1]) / by
      byLab[6 + c] = (there[2] - here[2]) / by
      pulls[c] = (deltaE2000(labs[i] as Lab, there) ** 2 - shown) / (2 * by)
    }
  }
  /** The curvature about the present colour, carried over to R′, G′, B′. */
  const fillSquare = (i: number): void => {
    const m = (k: number) => curvatures[i * 6 + k] as number
    for (let c = 0; c < 3; c++) {
      const [l, a, b] = [byLab[c] as number, byLab[3 + c] as number, byLab[6 + c] as number]
      const ml = m(0) * l + m(1) * a + m(2) * b
      const ma = m(1) * l + m(3) * a + m(4) * b
      const mb = m(2) * l + m(4) * a + m(5) * b
      for (let d = 0; d < 3; d++)
        square[c * 3 + d] =
          ml * (byLab[d] as number) + ma * (byLab[3 + d] as number) + mb * (byLab[6 + d] as number)
    }
  }

  const addNormal = (vector: Float64Array, sums: NormalSums): void => {
    const { slopes } = graded
    for (let p = 0; p < NUMBERS; p++) {
      const change = (vector[p] as number) - (present[p] as number)
      sums.slope[p] = (sums.slope[p] as number) + 2 * EFFORT * change
      sums.curve[p * (NUMBERS + 1)] = (sums.curve[p * (NUMBERS + 1)] as number) + 2 * EFFORT
    }
    for (let i = 0; i < count; i++) {
      fillSlopes(graded, colours, i * 3, vector)
      out.set(graded.out)
      const shown = shownSquare(i, out[0] as number, out[1] as number, out[2] as number)
      fillShown(i, shown)
      fillSquare(i)
      let all = shown + SOFT * SOFT
      for (let c = 0; c < 3; c++) all += hiddenChange(i, c) ** 2
      const by = (weights[i] as number) / (total * Math.sqrt(all))
      for (let c = 0; c < 3; c++) {
        const level = out[c] as number
        const isHidden = (level > 1 && level < high) || (level < 0 && level > low)
        const own = slopes.subarray(c * NUMBERS, (c + 1) * NUMBERS)
        if (isHidden) {
          for (let p = 0; p < NUMBERS; p++) row[p] = HIDDEN_WEIGHT * (own[p] as number)
          addResidual(sums, row, hiddenChange(i, c), by)
        }
        for (let p = 0; p < NUMBERS; p++) {
          const part = by * (own[p] as number)
          if (part === 0) continue
          sums.slope[p] = (sums.slope[p] as number) + part * (pulls[c] as number)
          for (let q = 0; q < NUMBERS; q++) {
            const carried =
              (square[c * 3] as number) * (slopes[q] as number) +
              (square[c * 3 + 1] as number) * (slopes[NUMBERS + q] as number) +
              (square[c * 3 + 2] as number) * (slopes[2 * NUMBERS + q] as number)
            sums.curve[p * NUMBERS + q] = (sums.curve[p * NUMBERS + q] as number) + part * carried
          }
        }
      }
    }
  }
  return {
    shownAt: (vector) => meanOf(vector, true),
    costAt: (vector) => meanOf(vector, false),
    addNormal,
  }
}
