import { cubicWeights } from './cubic'
import { gradeRow } from './gradeRow'
import { held } from './held'
import {
  framedRow,
  height,
  openBottom,
  openLeft,
  openRight,
  openTop,
  rowBytes,
  tapsAcross,
  tapsDown,
  turnedRows,
  turnX,
  turnXX,
  turnXY,
  turnY,
  turnYX,
  turnYY,
  width,
  widthAcross,
  widthDown,
} from './rasterSettings'

/** Weights across and down of a pixel read by `readWide`: as many as `filterWidths` asks for. */
const MOST_TAPS: i32 = 128
const acrossWeights = memory.data(MOST_TAPS * 4, 16)
const downWeights = memory.data(MOST_TAPS * 4, 16)

/** Grades all rows of a picture that is turned: a delivered row is read from many of them. */
export function gradeAll(): void {
  for (let y = 0; y < height; y++) gradeRow(y, turnedRows + (y as usize) * 3 * rowBytes)
}

// @ts-ignore: decorator
@inline
function columnAt(row: usize, x: i32): f32 {
  return load<f32>(row + ((max(0, min(x, width - 1)) as usize) << 2))
}

/** Four samples of a row from column `x` on, its ends repeated. */
// @ts-ignore: decorator
@inline
function samples4(row: usize, x: i32): v128 {
  if (x >= 0 && x + 4 <= width) return v128.load(row + ((x as usize) << 2))
  return f32x4.replace_lane(
    f32x4.replace_lane(
      f32x4.replace_lane(f32x4.splat(columnAt(row, x)), 1, columnAt(row, x + 1)),
      2,
      columnAt(row, x + 2),
    ),
    3,
    columnAt(row, x + 3),
  )
}

// @ts-ignore: decorator
@inline
function sum4(a: v128): f32 {
  const halves = f32x4.add(a, v128.shuffle<f32>(a, a, 2, 3, 0, 1))
  return f32x4.extract_lane(halves, 0) + f32x4.extract_lane(halves, 1)
}

/** Lays out the weights of a pixel, its first sample so far from its place; returns their sum. */
// @ts-ignore: decorator
@inline
function layWeights(fromX: f32, fromY: f32): f32 {
  const stepX = (1 / widthAcross) as f32
  const stepY = (1 / widthDown) as f32
  return (
    cubicWeights(acrossWeights, tapsAcross, fromX * stepX, stepX) *
    cubicWeights(downWeights, tapsDown, fromY * stepY, stepY)
  )
}

/** A pixel from any number of samples, the first at column `x` and row `y`; edges repeated. */
function readAtEdge(to: usize, x: i32, y: i32, fromX: f32, fromY: f32): void {
  const sum = layWeights(fromX, fromY)
  for (let c: usize = 0; c < 3; c++) {
    let total = f32x4.splat(0)
    for (let j = 0; j < tapsDown; j++) {
      const line = max(0, min(y + j, height - 1)) as usize
      const row = turnedRows + (line * 3 + c) * rowBytes
      let across = f32x4.splat(0)
      for (let k = 0; k < tapsAcross; k += 4) {
        const weights = v128.load(acrossWeights + ((k as usize) << 2))
        across = f32x4.add(across, f32x4.mul(samples4(row, x + k), weights))
      }
      const weight = v128.load32_splat(downWeights + ((j as usize) << 2))
      total = f32x4.add(total, f32x4.mul(across, weight))
    }
    store<f32>(to + c * rowBytes, sum4(total) / sum)
  }
}

/** The same where all its samples are on the scan, the first at `from`. */
function readMany(to: usize, from: usize, fromX: f32, fromY: f32): void {
  const sum = layWeights(fromX, fromY)
  const stride = rowBytes
  const pitch: usize = 3 * stride
  const endAcross = (tapsAcross as usize) << 2
  const endDown = downWeights + ((tapsDown as usize) << 2)
  let red = f32x4.splat(0)
  let green = f32x4.splat(0)
  let blue = f32x4.splat(0)
  for (let k: usize = 0; k < endAcross; k += 16) {
    let at = from + k
    let r = f32x4.splat(0)
    let g = f32x4.splat(0)
    let b = f32x4.splat(0)
    for (let down = downWeights; down < endDown; down += 4) {
      const weight = v128.load32_splat(down)
      r = f32x4.add(r, f32x4.mul(v128.load(at), weight))
      g = f32x4.add(g, f32x4.mul(v128.load(at + stride), weight))
      b = f32x4.add(b, f32x4.mul(v128.load(at + 2 * stride), weight))
      at += pitch
    }
    const across = v128.load(acrossWeights + k)
    red = f32x4.add(red, f32x4.mul(r, across))
    green = f32x4.add(green, f32x4.mul(g, across))
    blue = f32x4.add(blue, f32x4.mul(b, across))
  }
  store<f32>(to, sum4(red) / sum)
  store<f32>(to + stride, sum4(green) / sum)
  store<f32>(to + 2 * stride, sum4(blue) / sum)
}

/** Four rows, `pitch` apart, by a weight each. */
// @ts-ignore: decorator
@inline
function fourRows(at: usize, pitch: usize, a: v128, b: v128, c: v128, d: v128): v128 {
  const third = at + 2 * pitch
  return f32x4.add(
    f32x4.add(f32x4.mul(v128.load(at), a), f32x4.mul(v128.load(at + pitch), b)),
    f32x4.add(f32x4.mul(v128.load(third), c), f32x4.mul(v128.load(third + pitch), d)),
  )
}

/** Four cubics of one number: `a`·f³ + `b`·f² + `c`·f + `d`. */
// @ts-ignore: decorator
@inline
function cubics4(fraction: f32, a: v128, b: v128, c: v128, d: v128): v128 {
  const f = f32x4.splat(fraction)
  const slope = f32x4.add(f32x4.mul(f32x4.add(f32x4.mul(a, f), b), f), c)
  return f32x4.add(f32x4.mul(slope, f), d)
}

/** A pixel from four by four samples, all on the scan, the first at `from`. */
// @ts-ignore: decorator
@inline
function readFour(to: usize, from: usize, across: v128, down: v128): void {
  const a = v128.shuffle<f32>(down, down, 0, 0, 0, 0)
  const b = v128.shuffle<f32>(down, down, 1, 1, 1, 1)
  const c = v128.shuffle<f32>(down, down, 2, 2, 2, 2)
  const d = v128.shuffle<f32>(down, down, 3, 3, 3, 3)
  const stride = rowBytes
  const pitch: usize = 3 * stride
  const red = f32x4.mul(fourRows(from, pitch, a, b, c, d), across)
  const green = f32x4.mul(fourRows(from + stride, pitch, a, b, c, d), across)
  const blue = f32x4.mul(fourRows(from + 2 * stride, pitch, a, b, c, d), across)
  store<f32>(to, sum4(red))
  store<f32>(to + stride, sum4(green))
  store<f32>(to + 2 * stride, sum4(blue))
}

/**
 * Delivered row `y` of a turned picture into the framed row, by the arithmetic of `framePicture`:
 * places in f64, so that it is decided alike which pixels leave the scan.
 */
export function turnRow(y: i32): void {
  memory.fill(framedRow, 0, 3 * rowBytes - 64)
  if (y < openTop || y >= openBottom) return
  const lastX = (width as f64) - 0.5
  const lastY = (height as f64) - 0.5
  const reachX = (Math.ceil(2 * widthAcross) as i32) - 1
  const reachY = (Math.ceil(2 * widthDown) as i32) - 1
  const isFour = tapsAcross == 4 && tapsDown == 4
  // Keys' cubic (core/picture/keysCubic.ts) at the distances 1 + f, f, 1 - f and 2 - f.
  const cubes = held(0, f32x4(-0.5, 1.5, -1.5, 0.5))
  const squares = held(1, f32x4(1, -2.5, 2, -0.5))
  const firsts = held(2, f32x4(-0.5, 0, 0.5, 0))
  const wholes = held(3, f32x4(0, 1, 0, 0))
  for (let x = openLeft; x < openRight; x++) {
    const sx = turnXX * (x as f64) + turnXY * (y as f64) + turnX
    const sy = turnYX * (x as f64) + turnYY * (y as f64) + turnY
    if (sx < -0.5 || sx > lastX || sy < -0.5 || sy > lastY) continue
    const column = Math.floor(sx)
    const row = Math.floor(sy)
    const left = (column as i32) - reachX
    const top = (row as i32) - reachY
    const to = framedRow + ((x as usize) << 2)
    if (left < 0 || top < 0 || left + tapsAcross > width || top + tapsDown > height) {
      readAtEdge(to, left, top, ((left as f64) - sx) as f32, ((top as f64) - sy) as f32)
      continue
    }
    const from = turnedRows + (top as usize) * 3 * rowBytes + ((left as usize) << 2)
    if (isFour) {
      const across = cubics4((sx - column) as f32, cubes, squares, firsts, wholes)
      const down = cubics4((sy - row) as f32, cubes, squares, firsts, wholes)
      readFour(to, from, across, down)
    } else readMany(to, from, ((left as f64) - sx) as f32, ((top as f64) - sy) as f32)
  }
}
