import { gradeRow } from './gradeRow'
import { mixRows } from './mixRows'
import {
  framedRow,
  gradedCount,
  gradedRows,
  height,
  isFramed,
  isTurned,
  rowBytes,
  rowFirsts,
  rowWeights,
  tapsDown,
} from './rasterSettings'
import { resampleRow } from './resampleRow'
import { turnRow } from './turnedRow'

/** The next scanned row to be graded: rows are read downwards, each graded once. */
let nextRow: i32 = 0

/** To be called before the first row of a picture: nothing graded is kept from the last one. */
export function beginPicture(): void {
  nextRow = 0
}

/** Grades what is not graded yet of the rows from `first` that a delivered row is read from. */
function gradeFrom(first: i32): void {
  const end = min(first + tapsDown, height)
  for (let y = max(first, nextRow); y < end; y++)
    gradeRow(y, gradedRows + (y % gradedCount as usize) * 3 * rowBytes)
  nextRow = max(nextRow, end)
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
  const first = load<i32>(rowFirsts + ((y as usize) << 2))
  if (first < 0) {
    memory.fill(framedRow, 0, 3 * rowBytes - 64)
    return framedRow
  }
  gradeFrom(first)
  mixRows(first, rowWeights + ((y * tapsDown as usize) << 2), tapsDown)
  resampleRow()
  return framedRow
}
