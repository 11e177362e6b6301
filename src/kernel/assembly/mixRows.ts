import {
  gradedCount,
  gradedRows,
  height,
  mixedEnd,
  mixedFrom,
  mixedRow,
  rowBytes,
  width,
} from './rasterSettings'

// @ts-ignore: decorator
@inline
function rowAt(y: i32, first: i32): usize {
  // Taps past the last row weigh nothing: any row that has been graded will do.
  return gradedRows + ((y < height ? y : first) % gradedCount as usize) * 3 * rowBytes
}

// @ts-ignore: decorator
@inline
function weighted(row: usize, at: usize, weight: v128): v128 {
  return f32x4.mul(v128.load(row + at), weight)
}

/** Graded rows `y` to `y` + 3 by four weights; `isMore`: added to what the mixed row has. */
// @ts-ignore: decorator
@inline
function mixFour(y: i32, first: i32, weights: usize, isMore: bool): void {
  const a = rowAt(y, first)
  const b = rowAt(y + 1, first)
  const c = rowAt(y + 2, first)
  const d = rowAt(y + 3, first)
  const ofA = v128.load32_splat(weights)
  const ofB = v128.load32_splat(weights, 4)
  const ofC = v128.load32_splat(weights, 8)
  const ofD = v128.load32_splat(weights, 12)
  for (let channel: usize = 0; channel < 3; channel++) {
    const plane = channel * rowBytes
    const end = plane + mixedEnd
    for (let i = plane + mixedFrom; i < end; i += 16) {
      const outer = f32x4.add(weighted(a, i, ofA), weighted(d, i, ofD))
      const inner = f32x4.add(weighted(b, i, ofB), weighted(c, i, ofC))
      const sum = f32x4.add(outer, inner)
      const to = mixedRow + i
      v128.store(to, isMore ? f32x4.add(v128.load(to), sum) : sum)
    }
  }
}

/** Graded rows from `first` on by `taps` weights (a multiple of 4) into the mixed row. */
export function mixRows(first: i32, weights: usize, taps: i32): void {
  mixFour(first, first, weights, false)
  for (let k = 4; k < taps; k += 4)
    mixFour(first + k, first, weights + ((k as usize) << 2), true)
  // Where a row is shorter than the taps are wide, what lies after it is read and weighs nothing.
  const end = mixedRow + ((width as usize) << 2)
  for (let channel: usize = 0; channel < 3; channel++)
    v128.store(end + channel * rowBytes, f32x4.splat(0))
}
