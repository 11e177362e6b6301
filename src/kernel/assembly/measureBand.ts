import {
  bCodes,
  cbCodes,
  crCodes,
  gCodes,
  keepsCodes,
  keepsRgbCodes,
  rCodes,
  yCodes,
} from './codeSettings'
import { deliveredRow } from './deliveredRow'
import { encodeRgbRow } from './encodeRgbRow'
import { encodeRow } from './encodeRow'
import { filterRow } from './filterRow'
import { isFiltered } from './levelSettings'
import { measureRow } from './measureRow'
import { filteredRows, height, rowBytes, width } from './rasterSettings'
import { repeatEnds } from './rowEnds'

/** Pixels measured at a time. */
// @ts-ignore: decorator
@inline
const GROUP: i32 = 8

// @ts-ignore: decorator
@inline
function filteredRow(y: i32): usize {
  return filteredRows + ((y % 3) as usize) * 3 * rowBytes
}

// @ts-ignore: decorator
@inline
function repeatLast(row: usize): void {
  for (let c: usize = 0; c < 3; c++) repeatEnds(row + c * rowBytes, width, GROUP - 1)
}

/** Delivered row `y`, kept as codes where they are wanted: the `index`th row of its band. */
// @ts-ignore: decorator
@inline
function keptRow(y: i32, index: i32): usize {
  const row = deliveredRow(y)
  const at = ((index * width) as usize) << 1
  if (keepsCodes) encodeRow(row, yCodes + at, cbCodes + at, crCodes + at)
  if (keepsRgbCodes) encodeRgbRow(row, rCodes + at, gCodes + at, bCodes + at)
  return row
}

/** Filters delivered row `y`, and measures the row above it: then all three rows are there. */
function measureAfter(y: i32, index: i32): void {
  const row = filteredRow(y)
  filterRow(keptRow(y, index), row)
  repeatLast(row)
  if (y > 0) measureRow(filteredRow(max(y - 2, 0)), filteredRow(y - 1), row)
  if (y == height - 1) measureRow(filteredRow(max(y - 1, 0)), row, row)
}

/**
 * Delivered rows `first` up to `end` into the statistics. All rows of a picture are to be given
 * once, in their order.
 */
export function measureBand(first: i32, end: i32): void {
  for (let y = first; y < end; y++) {
    if (isFiltered) {
      measureAfter(y, y - first)
    } else {
      const row = keptRow(y, y - first)
      repeatLast(row)
      measureRow(row, row, row)
    }
  }
}
