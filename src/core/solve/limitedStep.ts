import { solveSymmetric } from './solveSymmetric.ts'

/** A square form of `n` values (slope and curvature at 0), and straight limits on them. */
export type LimitedForm = {
  readonly slope: Float64Array
  readonly curve: Float64Array
  readonly past: Float64Array
  readonly slopes: Float64Array
  readonly parts: Float64Array
}

/** The values, and how much less the sum is with them than with none. */
type LimitedStep = { readonly values: Float64Array; readonly gain: number }

const MOST_TURNS = 12
const HALVINGS = 6

/**
 * The values for which the form and `by` times the squares past the limits, weighted by their
 * parts, are least: Newton's steps on a sum that is square piece by piece, with `by` raised in turn
 * so that the limits that count are found from afar.
 */
export const limitedStep = (form: LimitedForm, by: number): LimitedStep => {
  const { slope, curve, past, slopes, parts } = form
  const n = slope.length
  const count = past.length
  let values = new Float64Array(n)
  const pastAt = (at: Float64Array, row: number): number => {
    let sum = past[row] as number
    const first = row * n
    for (let k = 0; k < n; k++) sum += (slopes[first + k] as number) * (at[k] as number)
    return sum
  }
  const sumAt = (at: Float64Array, weight: number): number => {
    let sum = 0
    for (let k = 0; k < n; k++) {
      let bend = 0
      for (let l = 0; l < n; l++) bend += (curve[k * n + l] as number) * (at[l] as number)
      sum += (at[k] as number) * ((slope[k] as number) + bend / 2)
    }
    for (let row = 0; row < count; row++) {
      const over = pastAt(at, row)
      if (over > 0) sum += weight * (parts[row] as number) * over * over
    }
    return sum
  }
  const rows = new Float64Array(n * n)
  const right = new Float64Array(n)
  for (const weight of [by * 1e-4, by * 1e-2, by]) {
    let sum = sumAt(values, weight)
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      rows.set(curve)
      for (let k = 0; k < n; k++) {
        let bend = slope[k] as number
        for (let l = 0; l < n; l++) bend += (curve[k * n + l] as number) * (values[l] as number)
        right[k] = -bend
      }
      for (let row = 0; row < count; row++) {
        const over = pastAt(values, row)
        if (over <= 0) continue
        const double = 2 * weight * (parts[row] as number)
        for (let k = 0; k < n; k++) {
          const part = double * (slopes[row * n + k] as number)
          if (part === 0) continue
          right[k] = (right[k] as number) - part * over
          for (let l = 0; l < n; l++)
            rows[k * n + l] = (rows[k * n + l] as number) + part * (slopes[row * n + l] as number)
        }
      }
      solveSymmetric(rows, right)
      let part = 1
      let tried = values
      let after = sum
      for (let halving = 0; halving < HALVINGS; halving++, part /= 2) {
        const from = values
        tried = from.map((value, k) => value + part * (right[k] as number))
        after = sumAt(tried, weight)
        if (after < sum) break
      }
      if (!(after < sum)) break
      const gained = sum - after
      values = tried
      sum = after
      if (gained <= 1e-9 * Math.abs(sum)) break
    }
  }
  return { values, gain: sumAt(new Float64Array(n), by) - sumAt(values, by) }
}
