import { NUMBERS } from './gradeVector.ts'

/** Half the slope of a sum of squares by the numbers of a grade, and half its curvature. */
export type NormalSums = { readonly slope: Float64Array; readonly curve: Float64Array }

export const normalSums = (): NormalSums => ({
  slope: new Float64Array(NUMBERS),
  curve: new Float64Array(NUMBERS * NUMBERS),
})

/** Adds `by` · residual · its slopes, and `by` · the product of the slopes with themselves. */
export const addResidual = (
  { slope, curve }: NormalSums,
  slopes: Float64Array,
  residual: number,
  by: number,
): void => {
  for (let p = 0; p < NUMBERS; p++) {
    const part = by * (slopes[p] as number)
    if (part === 0) continue
    slope[p] = (slope[p] as number) + part * residual
    const row = p * NUMBERS
    for (let q = 0; q < NUMBERS; q++)
      curve[row + q] = (curve[row + q] as number) + part * (slopes[q] as number)
  }
}
