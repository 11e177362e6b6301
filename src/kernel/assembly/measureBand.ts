import { keepsCodes } from './codeSettings'
import { codesRow } from './codesRow'
import { deliveredRow } from './deliveredRow'
import { filterRow } from './filterRow'
import { isComposite, isFiltered } from './levelSettings'
import { measureRow } from './measureRow'
import { filteredRows, height, rowBytes, width } from './rasterSettings'
import { noNumbersAfter } from './rowEnds'
import { Component, Composite, Filtered, Unfiltered } from './variants'

// @ts-ignore: decorator
@inline
function filteredRow(y: i32): usize {
  return filteredRows + ((y % 3) as usize) * 3 * rowBytes
}

// @ts-ignore: decorator
@inline
function endRow(row: usize): void {
  for (let c: usize = 0; c < 3; c++) noNumbersAfter(row + c * rowBytes, width)
}

/** Filters delivered row `y`, and measures the row above it: then all three rows are there. */
function measureAfter(y: i32, at: usize): void {
  const row = filteredRow(y)
  const delivered = deliveredRow(y)
  if (keepsCodes) codesRow<Filtered, Component>(delivered, at)
  filterRow(delivered, row)
  endRow(row)
  if (y > 0) measureRow(filteredRow(max(y - 2, 0)), filteredRow(y - 1), row)
  if (y == height - 1) measureRow(filteredRow(max(y - 1, 0)), row, row)
}

function measureUnfiltered(y: i32, at: usize): void {
  const row = deliveredRow(y)
  endRow(row)
  if (!keepsCodes) measureRow(row, row, row)
  else if (isComposite) codesRow<Unfiltered, Composite>(row, at)
  else codesRow<Unfiltered, Component>(row, at)
}

/**
 * Delivered rows `first` up to `end` into the statistics, and where they are wanted as codes into
 * the band's planes. All rows of a picture are to be given once, in their order.
 */
export function measureBand(first: i32, end: i32): void {
  for (let y = first; y < end; y++) {
    const at = (((y - first) * width) as usize) << 1
    if (isFiltered) measureAfter(y, at)
    else measureUnfiltered(y, at)
  }
}
