import {
  cellColumns,
  cellColumnSums,
  cellCount,
  cellRowEnds,
  cellStarts,
  cellSums,
} from './cellSettings'
import { rowBytes, width } from './rasterSettings'

/** The row of cells that is being summed, and the first delivered row of it. */
let cellRow: i32 = 0
let firstOfCellRow: i32 = 0

// @ts-ignore: decorator
@inline
function keepRow(row: usize): void {
  const size = (width as usize) << 2
  for (let c: usize = 0; c < 3; c++) {
    const plane = c * rowBytes
    for (let i: usize = plane; i < plane + size; i += 16)
      v128.store(cellColumnSums + i, v128.load(row + i))
  }
}

// @ts-ignore: decorator
@inline
function addRow(row: usize): void {
  const size = (width as usize) << 2
  for (let c: usize = 0; c < 3; c++) {
    const plane = c * rowBytes
    for (let i: usize = plane; i < plane + size; i += 16) {
      const sum = cellColumnSums + i
      v128.store(sum, f32x4.add(v128.load(sum), v128.load(row + i)))
    }
  }
}

/** Sums of the columns to sums of the cells. */
function sumAcross(): void {
  const first = (cellRow * cellColumns) as usize
  for (let c: usize = 0; c < 3; c++) {
    const from = cellColumnSums + c * rowBytes
    const to = cellSums + ((c * (cellCount as usize) + first) << 2)
    for (let i: usize = 0; i < (cellColumns as usize) << 2; i += 4) {
      const end = load<i32>(cellStarts + i, 4) as usize
      let sum: f32 = 0
      for (let at = load<i32>(cellStarts + i) as usize; at < end; at += 4)
        sum += load<f32>(from + at)
      store<f32>(to + i, sum)
    }
  }
}

/** Delivered row `y`, in the buffer at `row`, into the sums of cells. Rows come in their order. */
export function sumCells(y: i32, row: usize): void {
  if (y == 0) {
    cellRow = 0
    firstOfCellRow = 0
  }
  if (y == firstOfCellRow) keepRow(row)
  else addRow(row)
  if (y + 1 < load<i32>(cellRowEnds + ((cellRow as usize) << 2))) return
  sumAcross()
  cellRow++
  firstOfCellRow = y + 1
}
