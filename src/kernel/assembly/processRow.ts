import { processAt } from './baseSettings'
import { cubeRow } from './cubeRow'
import { weighted4 } from './levels'
import { alongPieces4 } from './pieces'
import { firstPiece4, lastPiece4, power4, table4, wholePieces4 } from './power'
import { rowBytes, width } from './rasterSettings'

/**
 * A process list: operations of 64 bytes, each i32 kind, three words, twelve f32, in the order of
 * `processProgram.ts`. Tables are named by bytes from the start of the program.
 */
const LINES: i32 = 1
const POWER: i32 = 2
const CURVE: i32 = 3
const TRILINEAR: i32 = 4
// @ts-ignore: decorator
@inline
const OPERATION_BYTES: usize = 64

// @ts-ignore: decorator
@inline
function tableOf(operation: usize, channel: usize): usize {
  return processAt + (load<i32>(operation + 4 + (channel << 2)) as usize)
}

/** Words: least and most. Numbers: three rows and three offsets. */
function linesRow(row: usize, operation: usize): void {
  const end = row + ((width as usize) << 2)
  const least = v128.load32_splat(operation, 4)
  const most = v128.load32_splat(operation, 8)
  for (let at = row; at < end; at += 16) {
    const r = v128.load(at)
    const g = v128.load(at + rowBytes)
    const b = v128.load(at + 2 * rowBytes)
    for (let c: usize = 0; c < 3; c++) {
      const numbers = operation + 16 + c * 12
      const offset = v128.load32_splat(operation + 52 + (c << 2))
      const sum = weighted4(
        r,
        g,
        b,
        v128.load32_splat(numbers),
        v128.load32_splat(numbers, 4),
        v128.load32_splat(numbers, 8),
      )
      v128.store(at + c * rowBytes, f32x4.min(f32x4.max(f32x4.add(sum, offset), least), most))
    }
  }
}

/** Words: the tables of R′, G′, B′ (see power.ts). */
function powerRow(row: usize, operation: usize): void {
  for (let c: usize = 0; c < 3; c++) {
    const from = row + c * rowBytes
    const end = from + ((width as usize) << 2)
    const table = table4(tableOf(operation, c))
    for (let at = from; at < end; at += 16)
      v128.store(
        at,
        power4(v128.load(at), table, wholePieces4(), firstPiece4(), lastPiece4()),
      )
  }
}

/** Words: the tables of R′, G′, B′, each a value and the rise to the next; number: places. */
function curveRow(row: usize, operation: usize): void {
  const places = load<f32>(operation, 16)
  const scale = f32x4.splat(places - 1)
  const last = f32x4.splat(places - 2)
  const zero = f32x4.splat(0)
  for (let c: usize = 0; c < 3; c++) {
    const from = row + c * rowBytes
    const end = from + ((width as usize) << 2)
    const table = i32x4.splat(tableOf(operation, c) as i32)
    for (let at = from; at < end; at += 16) {
      const place = f32x4.pmin(
        scale,
        f32x4.pmax(zero, f32x4.mul(v128.load(at), scale)),
      )
      const before = f32x4.pmin(last, f32x4.floor(place))
      const piece = i32x4.trunc_sat_f32x4_s(before)
      const address = i32x4.add(i32x4.shl(piece, 3), table)
      v128.store(at, alongPieces4(f32x4.sub(place, before), address))
    }
  }
}

/** A row buffer of levels through all operations of the list, in place. */
export function processRow(row: usize): void {
  for (let at = processAt; ; at += OPERATION_BYTES) {
    const kind = load<i32>(at)
    if (kind == 0) return
    if (kind == LINES) linesRow(row, at)
    else if (kind == POWER) powerRow(row, at)
    else if (kind == CURVE) curveRow(row, at)
    else cubeRow(row, tableOf(at, 0), load<f32>(at, 16), kind == TRILINEAR)
  }
}
