import { gradeRow } from './gradeRow'
import {
  columnFractions,
  columnOffsets,
  framedRow,
  gradedRows,
  height,
  isFramed,
  isTurned,
  mixedRow,
  rowBytes,
  rowPlaces,
  width,
} from './rasterSettings'
import { repeatEnds } from './rowEnds'
import { turnRow } from './turnedRow'

/** Which source rows the two graded row buffers hold. */
let heldFirst: i32 = -1
let heldSecond: i32 = -1

/** To be called before the first row of a picture: nothing graded is kept from the last one. */
export function beginPicture(): void {
  heldFirst = -1
  heldSecond = -1
}

/** The row buffer with graded source row `y`, graded now unless held; `keep` is not given up. */
function gradedRow(y: i32, keep: i32): usize {
  const first = gradedRows
  const second = gradedRows + 3 * rowBytes
  if (heldFirst == y) return first
  if (heldSecond == y) return second
  if (heldFirst != keep) {
    heldFirst = y
    gradeRow(y, first)
    return first
  }
  heldSecond = y
  gradeRow(y, second)
  return second
}

// @ts-ignore: decorator
@inline
function mixRows(upper: usize, lower: usize, fraction: f32): void {
  const part = f32x4.splat(fraction)
  const rest = f32x4.splat(1 - fraction)
  const size = (width as usize) << 2
  for (let c: usize = 0; c < 3; c++) {
    const plane = c * rowBytes
    for (let i: usize = plane; i < plane + size; i += 16) {
      v128.store(
        mixedRow + i,
        f32x4.add(
          f32x4.mul(v128.load(upper + i), rest),
          f32x4.mul(v128.load(lower + i), part),
        ),
      )
    }
    repeatEnds(mixedRow + plane, width, 1)
  }
}

/** Reads the mixed row at every delivered column; the zeros of its margin stand for "outside". */
// @ts-ignore: decorator
@inline
function resampleRow(): void {
  const size = (width as usize) << 2
  for (let c: usize = 0; c < 3; c++) {
    const from = mixedRow + c * rowBytes
    const to = framedRow + c * rowBytes
    for (let i: usize = 0; i < size; i += 16) {
      const offsets = columnOffsets + i
      const low = v128.load64_lane(
        from + load<i32>(offsets, 4),
        v128.load64_zero(from + load<i32>(offsets)),
        1,
      )
      const high = v128.load64_lane(
        from + load<i32>(offsets, 12),
        v128.load64_zero(from + load<i32>(offsets, 8)),
        1,
      )
      const left = v128.shuffle<f32>(low, high, 0, 2, 4, 6)
      const right = v128.shuffle<f32>(low, high, 1, 3, 5, 7)
      const part = v128.load(columnFractions + i)
      const rest = f32x4.sub(f32x4.splat(1), part)
      v128.store(to + i, f32x4.add(f32x4.mul(left, rest), f32x4.mul(right, part)))
    }
  }
}

/** The row buffer with delivered row `y`, before saturation: valid until the next call. */
export function deliveredRow(y: i32): usize {
  if (!isFramed) {
    gradeRow(y, gradedRows)
    return gradedRows
  }
  if (isTurned) {
    turnRow(y)
    return framedRow
  }
  const place = rowPlaces + ((y as usize) << 4)
  const upperRow = load<i32>(place)
  if (upperRow < 0) {
    memory.fill(framedRow, 0, 3 * rowBytes - 64)
    return framedRow
  }
  const lowerRow = load<i32>(place, 4)
  const upper = gradedRow(upperRow, lowerRow)
  const lower = gradedRow(lowerRow, upperRow)
  mixRows(upper, lower, load<f32>(place, 8))
  resampleRow()
  return framedRow
}
