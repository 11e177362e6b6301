/**
 * Solves a symmetric positive definite system in place by elimination: `rows` is n×n, row by row,
 * `right` the n right sides, and afterwards the n values.
 */
export const solveSymmetric = (rows: Float64Array, right: Float64Array): void => {
  const n = right.length
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const factor = (rows[j * n + i] as number) / (rows[i * n + i] as number)
      for (let k = i; k < n; k++)
        rows[j * n + k] = (rows[j * n + k] as number) - factor * (rows[i * n + k] as number)
      right[j] = (right[j] as number) - factor * (right[i] as number)
    }
  for (let i = n - 1; i >= 0; i--) {
    let rest = right[i] as number
    for (let k = i + 1; k < n; k++) rest -= (rows[i * n + k] as number) * (right[k] as number)
    right[i] = rest / (rows[i * n + i] as number)
  }
}
