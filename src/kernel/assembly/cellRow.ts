import {
  cellColumns,
  cellCount,
  cellLanes,
  cellRowEnds,
  cellStarts,
  cellSums,
  laneMasks,
} from './cellSettings'
import { rowBytes } from './rasterSettings'

/** The row of cells that is being summed, and the first delivered row of it. */
let cellRow: i32 = 0
let firstOfCellRow: i32 = 0

// @ts-ignore: decorator
@inline
function add(lanes: usize, levels: v128): void {
  v128.store(lanes, f32x4.add(v128.load(lanes), levels))
}

/**
 * A row into the lanes of its cells, the three planes abreast. The last levels of a cell are masked:
 * what lies past them is the next cell's, or nothing.
 */
function addRow(row: usize): void {
  const green = rowBytes
  const blue = green << 1
  let lanes = cellLanes
  let at = row
  for (let i: usize = 4; i <= (cellColumns as usize) << 2; i += 4) {
    const end = row + (load<i32>(cellStarts + i) as usize)
    let r = f32x4.splat(0)
    let g = r
    let b = r
    for (; at + 16 <= end; at += 16) {
      r = f32x4.add(r, v128.load(at))
      g = f32x4.add(g, v128.load(at + green))
      b = f32x4.add(b, v128.load(at + blue))
    }
    if (at < end) {
      const mask = v128.load(laneMasks + ((end - at) << 2))
      r = f32x4.add(r, v128.and(v128.load(at), mask))
      g = f32x4.add(g, v128.and(v128.load(at + green), mask))
      b = f32x4.add(b, v128.and(v128.load(at + blue), mask))
      at = end
    }
    add(lanes, r)
    add(lanes + 16, g)
    add(lanes + 32, b)
    lanes += 48
  }
}

// @ts-ignore: decorator
@inline
function across(at: usize): f32 {
  const lanes = v128.load(at)
  const pairs = f32x4.add(lanes, v128.shuffle<f32>(lanes, lanes, 2, 3, 0, 1))
  return f32x4.extract_lane(pairs, 0) + f32x4.extract_lane(pairs, 1)
}

/** The lanes of a row of cells to their sums. */
function sumLanes(): void {
  const plane = (cellCount as usize) << 2
  let to = cellSums + (((cellRow * cellColumns) as usize) << 2)
  const end = to + ((cellColumns as usize) << 2)
  for (let lanes = cellLanes; to < end; lanes += 48) {
    store<f32>(to, across(lanes))
    store<f32>(to + plane, across(lanes + 16))
    store<f32>(to + (plane << 1), across(lanes + 32))
    to += 4
  }
}

/** Delivered row `y`, in the buffer at `row`, into the sums of cells. Rows come in their order. */
export function sumCells(y: i32, row: usize): void {
  if (y == 0) {
    cellRow = 0
    firstOfCellRow = 0
  }
  if (y == firstOfCellRow) memory.fill(cellLanes, 0, (cellColumns as usize) * 48)
  addRow(row)
  if (y + 1 < load<i32>(cellRowEnds + ((cellRow as usize) << 2))) return
  sumLanes()
  cellRow++
  firstOfCellRow = y + 1
}
