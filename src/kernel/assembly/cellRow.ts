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
  memory.copy(cellColumnSums, row, 3 * rowBytes)
}

/** Adds sixteen levels at a time: past a row's last there is room, and what is there is not read. */
// @ts-ignore: decorator
@inline
function addRow(row: usize): void {
  const size = (width as usize) << 2
  for (let c: usize = 0; c < 3; c++) {
    const first = cellColumnSums + c * rowBytes
    const end = first + size
    const further = row - cellColumnSums
    for (let sum = first; sum < end; sum += 64) {
      const level = sum + further
      const sum0 = f32x4.add(v128.load(sum), v128.load(level))
      const sum1 = f32x4.add(v128.load(sum, 16), v128.load(level, 16))
      const sum2 = f32x4.add(v128.load(sum, 32), v128.load(level, 32))
      const sum3 = f32x4.add(v128.load(sum, 48), v128.load(level, 48))
      v128.store(sum, sum0)
      v128.store(sum, sum1, 16)
      v128.store(sum, sum2, 32)
      v128.store(sum, sum3, 48)
    }
  }
}

// @ts-ignore: decorator
@inline
function across(lanes: v128): f32 {
  const pairs = f32x4.add(lanes, v128.shuffle<f32>(lanes, lanes, 2, 3, 0, 1))
  return f32x4.extract_lane(pairs, 0) + f32x4.extract_lane(pairs, 1)
}

/** Sums of the columns to sums of the cells, the three planes abreast. */
function sumAcross(): void {
  const green = rowBytes
  const blue = green << 1
  const plane = (cellCount as usize) << 2
  let to = cellSums + ((cellRow * cellColumns) as usize << 2)
  for (let i: usize = 0; i < (cellColumns as usize) << 2; i += 4) {
    let at = cellColumnSums + (load<i32>(cellStarts + i) as usize)
    const end = cellColumnSums + (load<i32>(cellStarts + i, 4) as usize)
    let reds = f32x4.splat(0)
    let greens = reds
    let blues = reds
    for (; at + 16 <= end; at += 16) {
      reds = f32x4.add(reds, v128.load(at))
      greens = f32x4.add(greens, v128.load(at + green))
      blues = f32x4.add(blues, v128.load(at + blue))
    }
    let r = across(reds)
    let g = across(greens)
    let b = across(blues)
    for (; at < end; at += 4) {
      r += load<f32>(at)
      g += load<f32>(at + green)
      b += load<f32>(at + blue)
    }
    store<f32>(to, r)
    store<f32>(to + plane, g)
    store<f32>(to + (plane << 1), b)
    to += 4
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
