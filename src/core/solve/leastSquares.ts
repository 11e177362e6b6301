import { at } from '../base/assert.ts'
import { solveSymmetric } from './solveSymmetric.ts'

/** Where each value may go, both ends included. */
export type Bounds = { readonly low: readonly number[]; readonly high: readonly number[] }

const sumOfSquares = (values: Float64Array): number => values.reduce((sum, v) => sum + v * v, 0)

/** Differences for the slopes, small beside any value solved for here (all are of the size of 1). */
const STEP = 1e-6

/**
 * The values near `start`, inside `bounds`, for which the sum of the squared residuals is least:
 * damped Gauss–Newton steps (Levenberg 1944, Marquardt 1963), slopes by differences, a value at its
 * bound held there while the slope points outward. Finds the least sum near `start`, not the least
 * of all. `residualsAt` must give finite numbers, always as many, anywhere inside the bounds.
 */
export const leastSquares = (
  residualsAt: (values: readonly number[]) => Float64Array,
  start: readonly number[],
  { low, high }: Bounds,
  mostSteps = 100,
): number[] => {
  const inside = (value: number, i: number) => Math.min(Math.max(value, at(low, i)), at(high, i))
  let values = start.map(inside)
  let residuals = residualsAt(values)
  let cost = sumOfSquares(residuals)
  let damping = 1e-3
  for (let step = 0; step < mostSteps && damping < 1e9; step++) {
    const slopes = values.map((value, i) => {
      const by = value + STEP > at(high, i) ? -STEP : STEP
      const moved = residualsAt(values.with(i, value + by))
      return moved.map((r, k) => (r - at(residuals, k)) / by)
    })
    const pull = slopes.map((slope) => -slope.reduce((sum, s, k) => sum + s * at(residuals, k), 0))
    const free = values.flatMap((value, i) => {
      const end = at(pull, i) > 0 ? at(high, i) : at(low, i)
      return value === end || at(pull, i) === 0 ? [] : [i]
    })
    if (free.length === 0) break
    const normal = free.map((i) =>
      free.map((j) => at(slopes, i).reduce((sum, s, k) => sum + s * at(at(slopes, j), k), 0)),
    )
    let better = false
    for (; !better && damping < 1e9; damping *= better ? 0.1 : 10) {
      const n = free.length
      const rows = Float64Array.from(normal.flat())
      for (let k = 0; k < n; k++) rows[k * n + k] = at(rows, k * n + k) * (1 + damping) + 1e-12
      const move = Float64Array.from(free, (i) => at(pull, i))
      solveSymmetric(rows, move)
      const tried = values.map((value, i) => {
        const k = free.indexOf(i)
        return k < 0 ? value : inside(value + at(move, k), i)
      })
      const after = residualsAt(tried)
      const costAfter = sumOfSquares(after)
      better = costAfter < cost
      if (!better) continue
      const gained = cost - costAfter
      values = tried
      residuals = after
      if (gained <= 1e-12 * cost) return values
      cost = costAfter
    }
  }
  return values
}
