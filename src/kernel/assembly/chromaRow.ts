import { held } from './held'
import { cbToB, cbToG, chromaZeroCode, crToG, crToR, liftB, liftG, liftR } from './gradeSettings'
import {
  chromaColumns,
  chromaRow,
  chromaRows,
  isHalfHeight,
  rowBytes,
  secondPlane,
  thirdPlane,
} from './rasterSettings'
import { above, high4, load8, low4 } from './samples'

/** Three times the nearer samples plus the farther ones, less `zero`: quarter codes of 8 bits. */
// @ts-ignore: decorator
@inline
function quarters8(near: v128, far: v128, zero: v128): v128 {
  return i16x8.sub(i16x8.add(i16x8.add(i16x8.add(near, near), near), far), zero)
}

/** The same for four samples of up to 16 bits, as f32: exact. */
// @ts-ignore: decorator
@inline
function quarters4(near: v128, far: v128, zero: v128): v128 {
  return above(i32x4.add(i32x4.add(i32x4.add(near, near), near), far), zero)
}

// @ts-ignore: decorator
@inline
function chromaRow4(
  to: usize,
  stride: usize,
  cb: v128,
  cr: v128,
  toR: v128,
  toG: v128,
  alsoToG: v128,
  toB: v128,
  r: v128,
  g: v128,
  b: v128,
): void {
  const green = f32x4.add(f32x4.mul(cb, toG), f32x4.mul(cr, alsoToG))
  v128.store(to, f32x4.add(f32x4.mul(cr, toR), r))
  v128.store(to + stride, f32x4.add(green, g))
  v128.store(to + stride + stride, f32x4.add(f32x4.mul(cb, toB), b))
}

/**
 * What chroma and lift add to R′, G′ and B′ in row `y` of the picture, at half the width, plus
 * one repeated sample. Vertically a quarter way between the lines in 4:2:0.
 */
export function makeChromaRow<T>(y: i32): void {
  const columns = chromaColumns as usize
  let near = y
  let far = y
  if (isHalfHeight) {
    near = y >> 1
    far = min(max(near + ((y & 1) << 1) - 1, 0), chromaRows - 1)
  }
  const pitch = columns * sizeof<T>()
  let cb = secondPlane + (near as usize) * pitch
  let cr = thirdPlane + (near as usize) * pitch
  const step = ((far - near) as usize) * pitch
  const zero = held(0, i32x4.splat(chromaZeroCode))
  const toR = held(1, f32x4.splat(crToR))
  const toG = held(2, f32x4.splat(cbToG))
  const alsoToG = held(3, f32x4.splat(crToG))
  const toB = held(4, f32x4.splat(cbToB))
  const r = held(5, f32x4.splat(liftR))
  const g = held(6, f32x4.splat(liftG))
  const b = held(7, f32x4.splat(liftB))
  const shortZero = held(8, i16x8.splat(chromaZeroCode as i16))
  const stride = rowBytes
  const out = chromaRow
  const end = out + (columns << 2)
  for (let to = out; to < end; to += 32) {
    const cbNear = load8<T>(cb)
    const crNear = load8<T>(cr)
    const cbFar = load8<T>(cb + step)
    const crFar = load8<T>(cr + step)
    let cbLow: v128
    let crLow: v128
    let cbHigh: v128
    let crHigh: v128
    if (sizeof<T>() == 1) {
      const cb8 = quarters8(cbNear, cbFar, shortZero)
      const cr8 = quarters8(crNear, crFar, shortZero)
      cbLow = f32x4.convert_i32x4_s(i32x4.extend_low_i16x8_s(cb8))
      crLow = f32x4.convert_i32x4_s(i32x4.extend_low_i16x8_s(cr8))
      cbHigh = f32x4.convert_i32x4_s(i32x4.extend_high_i16x8_s(cb8))
      crHigh = f32x4.convert_i32x4_s(i32x4.extend_high_i16x8_s(cr8))
    } else {
      cbLow = quarters4(low4(cbNear), low4(cbFar), zero)
      crLow = quarters4(low4(crNear), low4(crFar), zero)
      cbHigh = quarters4(high4(cbNear), high4(cbFar), zero)
      crHigh = quarters4(high4(crNear), high4(crFar), zero)
    }
    chromaRow4(to, stride, cbLow, crLow, toR, toG, alsoToG, toB, r, g, b)
    chromaRow4(to + 16, stride, cbHigh, crHigh, toR, toG, alsoToG, toB, r, g, b)
    cb += 8 * sizeof<T>()
    cr += 8 * sizeof<T>()
  }
  for (let c: usize = 0; c < 3; c++) {
    const after = end + c * stride
    store<f32>(after, load<f32>(after - 4))
  }
}
