import { gradeRow } from './gradeRow'
import {
  framedRow,
  height,
  openBottom,
  openLeft,
  openRight,
  openTop,
  rowBytes,
  turnedRows,
  turnX,
  turnXX,
  turnXY,
  turnY,
  turnYX,
  turnYY,
  width,
} from './rasterSettings'

/** Grades all rows of a picture that is turned: a delivered row is read from many of them. */
export function gradeAll(): void {
  for (let y = 0; y < height; y++) gradeRow(y, turnedRows + (y as usize) * 3 * rowBytes)
}

// @ts-ignore: decorator
@inline
function between(a: usize, b: usize, left: usize, right: usize, fx: f32, fy: f32): f32 {
  const top = load<f32>(a + left) * (1 - fx) + load<f32>(a + right) * fx
  const bottom = load<f32>(b + left) * (1 - fx) + load<f32>(b + right) * fx
  return top * (1 - fy) + bottom * fy
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
  for (let x = openLeft; x < openRight; x++) {
    const sx = turnXX * (x as f64) + turnXY * (y as f64) + turnX
    const sy = turnYX * (x as f64) + turnYY * (y as f64) + turnY
    if (sx < -0.5 || sx > lastX || sy < -0.5 || sy > lastY) continue
    const x0 = Math.floor(sx)
    const y0 = Math.floor(sy)
    const left = (max(x0 as i32, 0) as usize) << 2
    const right = (min((x0 as i32) + 1, width - 1) as usize) << 2
    const upper = turnedRows + (max(y0 as i32, 0) as usize) * 3 * rowBytes
    const lower = turnedRows + (min((y0 as i32) + 1, height - 1) as usize) * 3 * rowBytes
    const fx = (sx - x0) as f32
    const fy = (sy - y0) as f32
    const to = framedRow + ((x as usize) << 2)
    for (let c: usize = 0; c < 3; c++) {
      const plane = c * rowBytes
      store<f32>(to + plane, between(upper + plane, lower + plane, left, right, fx, fy))
    }
  }
}
