/** Rows of numbers, all of one length. */
export type Rows = readonly (readonly number[])[]

/** What a least-squares problem comes to. */
export type LinearSolution = {
  /** One a column; 0 where a column says nothing that those before it do not. */
  readonly solution: readonly number[]
  /** Right-hand side less what the solution gives, one a row. */
  readonly residual: readonly number[]
  readonly rank: number
}

/** A column counts as said by those before it below this part of its length, times √m. */
const RANK_TOLERANCE = 1e-13

/** A column shorter than this is none: its reciprocal would be past the largest number. */
const SMALLEST = 1e-150

/** Rounds of refinement; more come to nothing in double precision. */
const ROUNDS = 3

type Vector = Float64Array

const dot = (a: Vector, b: Vector): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0)
  return sum
}

const subtract = (from: Vector, times: number, what: Vector): void => {
  for (let i = 0; i < from.length; i++) from[i] = (from[i] ?? 0) - times * (what[i] ?? 0)
}

/** A = Q·R: columns of Q of length 1 and square to each other, left out where they say nothing new. */
type Factors = {
  readonly columns: readonly Vector[]
  readonly basis: readonly (Vector | undefined)[]
  /** R by columns. */
  readonly upper: readonly (readonly number[])[]
}

const factorsOf = (columns: readonly Vector[]): Factors => {
  const basis: (Vector | undefined)[] = []
  const upper: number[][] = []
  for (const [j, from] of columns.entries()) {
    const column = from.slice()
    const above = columns.map(() => 0)
    for (const _ of [1, 2])
      for (let k = 0; k < j; k++) {
        const before = basis[k]
        if (!before) continue
        const part = dot(before, column)
        above[k] = (above[k] ?? 0) + part
        subtract(column, part, before)
      }
    const left = Math.sqrt(dot(column, column))
    const isNew = left > RANK_TOLERANCE * Math.sqrt(column.length)
    above[j] = isNew ? left : 0
    if (isNew) for (let i = 0; i < column.length; i++) column[i] = (column[i] ?? 0) / left
    basis.push(isNew ? column : undefined)
    upper.push(above)
  }
  return { columns, basis, upper }
}

/** R⁻ᵀ·g. */
const forward = ({ basis, upper }: Factors, g: Vector): Vector => {
  const h = new Float64Array(g.length)
  for (let j = 0; j < g.length; j++) {
    if (!basis[j]) continue
    let sum = g[j] ?? 0
    for (let k = 0; k < j; k++) sum -= (upper[j]?.[k] ?? 0) * (h[k] ?? 0)
    h[j] = sum / (upper[j]?.[j] ?? 1)
  }
  return h
}

/** R⁻¹·d. */
const backward = ({ basis, upper }: Factors, d: Vector): Vector => {
  const x = new Float64Array(d.length)
  for (let j = d.length - 1; j >= 0; j--) {
    if (!basis[j]) continue
    let sum = d[j] ?? 0
    for (let k = j + 1; k < d.length; k++) sum -= (upper[k]?.[j] ?? 0) * (x[k] ?? 0)
    x[j] = sum / (upper[j]?.[j] ?? 1)
  }
  return x
}

/** The parts of f along Q, and what is left of f. */
const along = ({ basis }: Factors, f: Vector): { readonly d: Vector; readonly rest: Vector } => {
  const rest = f.slice()
  const d = Float64Array.from(basis, (column) => {
    if (!column) return 0
    const part = dot(column, rest)
    subtract(rest, part, column)
    return part
  })
  return { d, rest }
}

/** Splits a double into two of half the digits (T. J. Dekker, Numerische Mathematik 18, 1971). */
const SPLITTER = 2 ** 27 + 1

/** What a product loses when it is rounded. */
const productError = (a: number, b: number, product: number): number => {
  const [x, y] = [SPLITTER * a, SPLITTER * b]
  const [aHigh, bHigh] = [x - (x - a), y - (y - b)]
  const [aLow, bLow] = [a - aHigh, b - bHigh]
  return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow)
}

/**
 * first + Σ aᵢ·bᵢ as if reckoned with twice the digits (T. Ogita, S. M. Rump and S. Oishi, “Accurate
 * sum and dot product”, SIAM J. Sci. Comput. 26, 2005, algorithm Dot2, from memory).
 */
const preciseSum = (
  first: number,
  count: number,
  a: (i: number) => number,
  b: (i: number) => number,
) => {
  let sum = first
  let lost = 0
  for (let i = 0; i < count; i++) {
    const [x, y] = [a(i), b(i)]
    const product = x * y
    const total = sum + product
    const back = total - sum
    lost += sum - (total - back) + (product - back) + productError(x, y, product)
    sum = total
  }
  return sum + lost
}

const add = (to: Vector, what: Vector): void => {
  for (let i = 0; i < to.length; i++) to[i] = (to[i] ?? 0) + (what[i] ?? 0)
}

/**
 * min ‖A·x − b‖₂ by modified Gram–Schmidt, each column made square to those before it twice and all
 * first brought to one length; solution and residual are then refined together by the augmented
 * system I·r + A·x = b, Aᵀ·r = 0 (Å. Björck, “Numerical Methods for Least Squares Problems”, SIAM
 * 1996, §2.4 and §2.9.2, from memory). Columns are taken in order: one that depends on those before
 * it gets 0.
 *
 * `rows` m×n, `right` m numbers, all finite.
 */
export const linearLeastSquares = (rows: Rows, right: readonly number[]): LinearSolution => {
  const n = rows[0]?.length ?? 0
  const lengths = Array.from({ length: n }, (_, j) => {
    const length = Math.hypot(...rows.map((row) => row[j] ?? 0))
    return length > SMALLEST ? length : Number.POSITIVE_INFINITY
  })
  const factors = factorsOf(
    lengths.map((length, j) => Float64Array.from(rows, (row) => (row[j] ?? 0) / length)),
  )
  const x = new Float64Array(n)
  const r = new Float64Array(right.length)
  for (let round = 0; round <= ROUNDS; round++) {
    const { columns } = factors
    const f = Float64Array.from(right, (b, i) =>
      preciseSum(
        b,
        n + 1,
        (j) => -(columns[j]?.[i] ?? 1),
        (j) => (j < n ? (x[j] ?? 0) : (r[i] ?? 0)),
      ),
    )
    const g = Float64Array.from(columns, (column) =>
      preciseSum(
        0,
        column.length,
        (i) => -(column[i] ?? 0),
        (i) => r[i] ?? 0,
      ),
    )
    const h = forward(factors, g)
    const { d, rest } = along(factors, f)
    add(
      x,
      backward(
        factors,
        Float64Array.from(d, (part, j) => part - (h[j] ?? 0)),
      ),
    )
    for (const [j, column] of factors.basis.entries())
      if (column) subtract(rest, -(h[j] ?? 0), column)
    add(r, rest)
  }
  const solution = Array.from(x, (value, j) => value / (lengths[j] ?? 1))
  return {
    solution,
    residual: right.map((b, i) =>
      (rows[i] ?? []).reduce((sum, value, j) => sum - value * (solution[j] ?? 0), b),
    ),
    rank: factors.basis.filter((column) => column !== undefined).length,
  }
}
