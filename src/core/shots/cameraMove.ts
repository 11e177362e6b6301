import { at } from '../base/assert.ts'
import { GRID_WIDTH } from './frameSignature.ts'
import type { PictureArea } from './pictureArea.ts'

/** A camera move over the grid: cells to the right and down, and growth about the middle. */
export type CameraMove = { readonly dx: number; readonly dy: number; readonly zoom: number }

export const NO_MOVE: CameraMove = { dx: 0, dy: 0, zoom: 0 }

const PASSES = 4

/** A step this small, in cells, ends the search. */
const SMALLEST_STEP = 0.04

/** A step of the search beyond this many cells has lost its way. */
const LARGEST_STEP = 3
const LARGEST_MOVE = 10

/**
 * A picture moved by `move`: `out` gets its value in every cell of the area, NaN where what is
 * seen there was outside the area before.
 */
export const moved = (
  luma: Float32Array,
  area: PictureArea,
  move: CameraMove,
  out: Float32Array,
  rowStep = 1,
): void => {
  const cx = (area.left + area.right - 1) / 2
  const cy = (area.top + area.bottom - 1) / 2
  const scale = 1 / (1 + move.zoom)
  for (let y = area.top; y < area.bottom; y += rowStep) {
    const v = cy + (y - cy - move.dy) * scale
    const row = Math.floor(v)
    const down = v - row
    const isRow = v >= area.top && v <= area.bottom - 1
    for (let x = area.left; x < area.right; x++) {
      const i = y * GRID_WIDTH + x
      const u = cx + (x - cx - move.dx) * scale
      if (!isRow || u < area.left || u > area.right - 1) {
        out[i] = Number.NaN
        continue
      }
      const column = Math.floor(u)
      const j = row * GRID_WIDTH + column
      const across = u - column
      const right = across > 0 ? 1 : 0
      const below = down > 0 ? GRID_WIDTH : 0
      const a = luma[j] as number
      const b = luma[j + right] as number
      const c = luma[j + below] as number
      const d = luma[j + below + right] as number
      out[i] = (a + (b - a) * across) * (1 - down) + (c + (d - c) * across) * down
    }
  }
}

/** Solves the symmetric 5 × 5 system in place by elimination; undefined where it is singular. */
const solve = (rows: Float64Array[], values: Float64Array): Float64Array | undefined => {
  const size = values.length
  for (let k = 0; k < size; k++) {
    const pivot = at(at(rows, k), k)
    if (!(Math.abs(pivot) > 1e-12)) return undefined
    for (let i = k + 1; i < size; i++) {
      const factor = at(at(rows, i), k) / pivot
      for (let j = k; j < size; j++)
        at(rows, i)[j] = at(at(rows, i), j) - factor * at(at(rows, k), j)
      values[i] = at(values, i) - factor * at(values, k)
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    let sum = at(values, k)
    for (let j = k + 1; j < size; j++) sum -= at(at(rows, k), j) * at(values, j)
    values[k] = sum / at(at(rows, k), k)
  }
  return values
}

/**
 * The camera move that takes one picture to another, with their brightness and contrast left
 * free: least squares on the slopes of the picture (Lucas and Kanade 1981, from memory).
 * NO_MOVE where none is found.
 */
export const cameraMove = (from: Float32Array, to: Float32Array, area: PictureArea): CameraMove => {
  const warped = new Float32Array(from.length)
  const cx = (area.left + area.right - 1) / 2
  const cy = (area.top + area.bottom - 1) / 2
  const half = (area.right - area.left) / 2
  let move = NO_MOVE
  for (let pass = 0; pass < PASSES; pass++) {
    moved(from, area, move, warped)
    const rows = Array.from({ length: 5 }, () => new Float64Array(5))
    const values = new Float64Array(5)
    const basis = new Float64Array(5)
    for (let y = area.top + 1; y < area.bottom - 1; y += 2)
      for (let x = area.left + 1; x < area.right - 1; x++) {
        const i = y * GRID_WIDTH + x
        const gx = ((warped[i + 1] as number) - (warped[i - 1] as number)) / 2
        const gy = ((warped[i + GRID_WIDTH] as number) - (warped[i - GRID_WIDTH] as number)) / 2
        const here = warped[i] as number
        if (!(gx + gy + here > -9)) continue
        basis[0] = -gx
        basis[1] = -gy
        basis[2] = -(gx * (x - cx) + gy * (y - cy)) / half
        basis[3] = here
        basis[4] = 1
        const left = (to[i] as number) - here
        for (let j = 0; j < 5; j++) {
          const b = basis[j] as number
          const row = rows[j] as Float64Array
          for (let k = j; k < 5; k++) row[k] = (row[k] as number) + b * (basis[k] as number)
          values[j] = (values[j] as number) + b * left
        }
      }
    for (let j = 1; j < 5; j++) for (let k = 0; k < j; k++) at(rows, j)[k] = at(at(rows, k), j)
    const step = solve(rows, values)
    if (!step) return NO_MOVE
    const [dx, dy, zoom] = [at(step, 0), at(step, 1), at(step, 2) / half]
    if (!(Math.abs(dx) + Math.abs(dy) < LARGEST_STEP)) return NO_MOVE
    move = { dx: move.dx + dx, dy: move.dy + dy, zoom: move.zoom + zoom }
    if (Math.abs(dx) + Math.abs(dy) + Math.abs(zoom) * half < SMALLEST_STEP) break
  }
  return Math.abs(move.dx) + Math.abs(move.dy) < LARGEST_MOVE ? move : NO_MOVE
}
