import { sumCells } from './cellRow'
import { cellColumns } from './cellSettings'
import { keepsCodes } from './codeSettings'
import { deliveredRow } from './deliveredRow'
import { filterRow } from './filterRow'
import { isComposite, isFiltered, isSaturated } from './levelSettings'
import { levelsRow } from './levelsRow'
import { filteredRows, height, rowBytes, width } from './rasterSettings'
import { noNumbersAfter } from './rowEnds'
import {
  Component,
  Composite,
  Filtered,
  Kept,
  KeptAndMeasured,
  Measured,
  Saturated,
  Unfiltered,
  Unsaturated,
} from './variants'

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

// @ts-ignore: decorator
@inline
function measureSaturated<F, W, S>(upper: usize, middle: usize, lower: usize, at: usize): void {
  if (isComposite) levelsRow<F, W, S, Composite>(upper, middle, lower, at)
  else levelsRow<F, W, S, Component>(upper, middle, lower, at)
}

/** `levelsRow` with the variants that the settings ask for. */
// @ts-ignore: decorator
@inline
function measure<F, W>(upper: usize, middle: usize, lower: usize, at: usize): void {
  if (isSaturated) measureSaturated<F, W, Saturated>(upper, middle, lower, at)
  else measureSaturated<F, W, Unsaturated>(upper, middle, lower, at)
}

/** Filters delivered row `y`, and measures the row above it: then all three rows are there. */
function measureAfter(y: i32, at: usize): void {
  const delivered = deliveredRow(y)
  if (cellColumns) sumCells(y, delivered)
  if (keepsCodes) levelsRow<Unfiltered, Kept, Saturated, Component>(delivered, delivered, delivered, at)
  const row = filteredRow(y)
  filterRow(delivered, row)
  endRow(row)
  if (y > 0) measure<Filtered, Measured>(filteredRow(max(y - 2, 0)), filteredRow(y - 1), row, 0)
  if (y == height - 1) measure<Filtered, Measured>(filteredRow(max(y - 1, 0)), row, row, 0)
}

/**
 * Delivered rows `first` up to `end` into the statistics, and where they are wanted as codes into
 * the band's planes. All rows of a picture are to be given once, in their order.
 */
export function measureBand(first: i32, end: i32): void {
  for (let y = first; y < end; y++) {
    const at = (((y - first) * width) as usize) << 1
    if (isFiltered) {
      measureAfter(y, at)
    } else {
      const row = deliveredRow(y)
      if (cellColumns) sumCells(y, row)
      endRow(row)
      if (keepsCodes) measure<Unfiltered, KeptAndMeasured>(row, row, row, at)
      else measure<Unfiltered, Measured>(row, row, row, at)
    }
  }
}
