import { mapTriple, type Triple } from './triple.ts'

/** A 3×3 matrix by rows. */
export type Matrix3 = readonly [Triple, Triple, Triple]

export const IDENTITY_MATRIX3: Matrix3 = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

export const sameMatrix3 = (a: Matrix3, b: Matrix3): boolean =>
  a.every((row, i) => row.every((value, j) => value === b[i]?.[j]))

/** Matrix times column. */
export const applyMatrix3 = (matrix: Matrix3, [x, y, z]: Triple): Triple =>
  mapTriple([0, 1, 2], (row) => {
    const [a, b, c] = matrix[row as 0 | 1 | 2]
    return a * x + b * y + c * z
  })

/** Every row of `a` times the columns of `b`: what `b` and then `a` do. */
export const multiplyMatrix3 = (a: Matrix3, b: Matrix3): Matrix3 => {
  const row = ([x, y, z]: Triple): Triple =>
    mapTriple(b[0], (value, c) => x * value + y * b[1][c] + z * b[2][c])
  return [row(a[0]), row(a[1]), row(a[2])]
}

/** The inverse by cofactors; undefined where the determinant is 0. */
export const invertMatrix3 = (matrix: Matrix3): Matrix3 | undefined => {
  const [[a, b, c], [d, e, f], [g, h, i]] = matrix
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
  if (determinant === 0) return undefined
  const scaled = (row: Triple): Triple => mapTriple(row, (value) => value / determinant)
  return [
    scaled([e * i - f * h, c * h - b * i, b * f - c * e]),
    scaled([f * g - d * i, a * i - c * g, c * d - a * f]),
    scaled([d * h - e * g, b * g - a * h, a * e - b * d]),
  ]
}
