import { held } from './held'
import {
  blackCode,
  cbToB,
  cbToG,
  chromaZeroCode,
  crToG,
  crToR,
  liftB,
  liftG,
  liftR,
  lumaToB,
  lumaToG,
  lumaToR,
  powerOfB,
  powerOfG,
  powerOfR,
} from './gradeSettings'
import { firstPiece4, lastPiece4, power4, table4, wholePieces4 } from './power'
import { firstPlane, rowBytes, secondPlane, thirdPlane, width } from './rasterSettings'
import { above, load4 } from './samples'
import { is, Powered } from './variants'

/** Row `y` of a Y′CbCr 4:4:4 picture to a row buffer: `T` its samples, `P` its power. */
export function grade444<T, P>(y: i32, out: usize): void {
  const black = held(0, i32x4.splat(blackCode))
  const zero = held(1, i32x4.splat(chromaZeroCode))
  const whole = held(2, wholePieces4())
  const first = held(3, firstPiece4())
  const last = held(4, lastPiece4())
  const lumaR = held(5, f32x4.splat(lumaToR))
  const lumaG = held(6, f32x4.splat(lumaToG))
  const lumaB = held(7, f32x4.splat(lumaToB))
  const redCr = held(8, f32x4.splat(crToR))
  const greenCb = held(9, f32x4.splat(cbToG))
  const greenCr = held(10, f32x4.splat(crToG))
  const blueCb = held(11, f32x4.splat(cbToB))
  const red = held(12, f32x4.splat(liftR))
  const green = held(13, f32x4.splat(liftG))
  const blue = held(14, f32x4.splat(liftB))
  const tableR = held(15, table4(powerOfR))
  const tableG = held(16, table4(powerOfG))
  const tableB = held(17, table4(powerOfB))
  const stride = rowBytes
  const twoStrides = stride << 1
  const row = ((y * width) as usize) * sizeof<T>()
  let lumaAt = firstPlane + row
  let cbAt = secondPlane + row
  let crAt = thirdPlane + row
  const end = out + ((width as usize) << 2)
  for (let to = out; to < end; to += 16) {
    const luma = above(load4<T>(lumaAt), black)
    const cb = above(load4<T>(cbAt), zero)
    const cr = above(load4<T>(crAt), zero)
    const ofRed = f32x4.add(f32x4.mul(cr, redCr), red)
    const r = f32x4.add(f32x4.mul(luma, lumaR), ofRed)
    const ofGreen = f32x4.add(f32x4.add(f32x4.mul(cb, greenCb), f32x4.mul(cr, greenCr)), green)
    const g = f32x4.add(f32x4.mul(luma, lumaG), ofGreen)
    const ofBlue = f32x4.add(f32x4.mul(cb, blueCb), blue)
    const b = f32x4.add(f32x4.mul(luma, lumaB), ofBlue)
    v128.store(to, is<P, Powered>() ? power4(r, tableR, whole, first, last) : r)
    v128.store(to + stride, is<P, Powered>() ? power4(g, tableG, whole, first, last) : g)
    v128.store(to + twoStrides, is<P, Powered>() ? power4(b, tableB, whole, first, last) : b)
    lumaAt += 4 * sizeof<T>()
    cbAt += 4 * sizeof<T>()
    crAt += 4 * sizeof<T>()
  }
}
