import { linearLeastSquares, type Rows } from './linearLeastSquares.ts'

/** Lowest and highest value of an unknown. */
export type Bound = { readonly low: number; readonly high: number }

/** Where an unknown came to rest. */
export type Rest = 'free' | 'low' | 'high'

export type BoundedSolution = {
  readonly solution: readonly number[]
  readonly rests: readonly Rest[]
}

const MOST_ROUNDS = 30

const dotRow = (row: readonly number[], x: readonly number[]): number =>
  row.reduce((sum, value, j) => sum + value * (x[j] ?? 0), 0)

/**
 * min ‖A·x − b‖₂ with every unknown inside its bounds: an active-set method (P. B. Stark and R. L.
 * Parker, “Bounded-variable least-squares”, Computational Statistics 10, 1995, from memory). Unknowns
 * that rest on a bound are let go as long as the sum falls by it. No unknown ever leaves its bounds.
 *
 * `rows` m×n, `right` m numbers, `bounds` n with low ≤ high, all finite.
 */
export const boundedLeastSquares = (
  rows: Rows,
  right: readonly number[],
  bounds: readonly Bound[],
): BoundedSolution => {
  const n = bounds.length
  const x = bounds.map(({ low, high }) => Math.min(high, Math.max(low, 0)))
  const rests: Rest[] = bounds.map(() => 'free')
  /** The free unknowns as the least squares would have them, the others where they rest. */
  const wanted = (): number[] => {
    const free = rests.flatMap((rest, j) => (rest === 'free' ? [j] : []))
    const fixed = x.map((value, j) => (rests[j] === 'free' ? 0 : value))
    const small = rows.map((row) => free.map((j) => row[j] ?? 0))
    const left = right.map((b, i) => b - dotRow(rows[i] ?? [], fixed))
    const { solution } = linearLeastSquares(small, left)
    const next = x.slice()
    free.forEach((j, k) => {
      next[j] = solution[k] ?? 0
    })
    return next
  }
  /** Goes towards the wanted values up to the first bound that is met; true where none is. */
  const step = (next: readonly number[]): boolean => {
    let part = 1
    let met: { j: number; rest: Rest } | undefined
    for (let j = 0; j < n; j++) {
      const { low, high } = bounds[j] as Bound
      const [from, to] = [x[j] ?? 0, next[j] ?? 0]
      if (to >= low && to <= high) continue
      const edge = to < low ? low : high
      const reach = to === from ? 0 : (edge - from) / (to - from)
      if (reach < part || !met) {
        part = Math.min(part, Math.max(0, reach))
        met = { j, rest: to < low ? 'low' : 'high' }
      }
    }
    for (let j = 0; j < n; j++) {
      const { low, high } = bounds[j] as Bound
      const moved = (x[j] ?? 0) + part * ((next[j] ?? 0) - (x[j] ?? 0))
      x[j] = Math.min(high, Math.max(low, moved))
    }
    if (!met) return true
    const { low, high } = bounds[met.j] as Bound
    x[met.j] = met.rest === 'low' ? low : high
    rests[met.j] = met.rest
    return false
  }
  /** The bound whose leaving would lower the sum most; undefined where none would. */
  const worthLeaving = (): number | undefined => {
    const residual = right.map((b, i) => b - dotRow(rows[i] ?? [], x))
    const scale = Math.hypot(...residual) || 1
    let best: { j: number; slope: number } | undefined
    for (let j = 0; j < n; j++) {
      if (rests[j] === 'free') continue
      const column = rows.map((row) => row[j] ?? 0)
      const slope = column.reduce((sum, value, i) => sum + value * (residual[i] ?? 0), 0)
      const gain = rests[j] === 'low' ? slope : -slope
      const length = Math.hypot(...column)
      if (gain > 1e-10 * scale * length && gain > (best?.slope ?? 0)) best = { j, slope: gain }
    }
    return best?.j
  }
  for (let round = 0; round < MOST_ROUNDS * (n + 1); round++) {
    if (!step(wanted())) continue
    const leaving = worthLeaving()
    if (leaving === undefined) break
    rests[leaving] = 'free'
  }
  return { solution: x, rests }
}
