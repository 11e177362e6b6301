import { held } from './held'
import { makeChromaRow } from './chromaRow'
import { blackCode, lumaToB, lumaToG, lumaToR, powerOfB, powerOfG, powerOfR } from './gradeSettings'
import { firstPiece4, lastPiece4, power4, table4, wholePieces4 } from './power'
import { chromaRow, firstPlane, rowBytes, width } from './rasterSettings'
import { above, high4, load8, low4 } from './samples'
import { is, Powered } from './variants'

/** Row `y` of a picture with half-width chroma to a row buffer: `T` its samples, `P` its power. */
export function gradeSubsampled<T, P>(y: i32, out: usize): void {
  makeChromaRow<T>(y)
  const black = held(0, i32x4.splat(blackCode))
  const halves = held(1, f32x4.splat(0.5))
  const toR = held(2, f32x4.splat(lumaToR))
  const toG = held(3, f32x4.splat(lumaToG))
  const toB = held(4, f32x4.splat(lumaToB))
  const tableR = held(5, table4(powerOfR))
  const tableG = held(6, table4(powerOfG))
  const tableB = held(7, table4(powerOfB))
  const whole = held(8, wholePieces4())
  const first = held(9, firstPiece4())
  const last = held(10, lastPiece4())
  const stride = rowBytes
  const twoStrides = stride << 1
  let from = firstPlane + ((y * width) as usize) * sizeof<T>()
  let chroma = chromaRow
  const end = out + ((width as usize) << 2)
  for (let to = out; to < end; to += 32) {
    const luma = load8<T>(from)
    const low = above(low4(luma), black)
    const high = above(high4(luma), black)
    const hereR = v128.load(chroma)
    const nextR = f32x4.mul(f32x4.add(hereR, v128.load(chroma, 4)), halves)
    const r0 = f32x4.add(f32x4.mul(low, toR), v128.shuffle<f32>(hereR, nextR, 0, 4, 1, 5))
    const r1 = f32x4.add(f32x4.mul(high, toR), v128.shuffle<f32>(hereR, nextR, 2, 6, 3, 7))
    v128.store(to, is<P, Powered>() ? power4(r0, tableR, whole, first, last) : r0)
    v128.store(to, is<P, Powered>() ? power4(r1, tableR, whole, first, last) : r1, 16)
    const hereG = v128.load(chroma + stride)
    const nextG = f32x4.mul(f32x4.add(hereG, v128.load(chroma + stride, 4)), halves)
    const g0 = f32x4.add(f32x4.mul(low, toG), v128.shuffle<f32>(hereG, nextG, 0, 4, 1, 5))
    const g1 = f32x4.add(f32x4.mul(high, toG), v128.shuffle<f32>(hereG, nextG, 2, 6, 3, 7))
    v128.store(to + stride, is<P, Powered>() ? power4(g0, tableG, whole, first, last) : g0)
    v128.store(to + stride, is<P, Powered>() ? power4(g1, tableG, whole, first, last) : g1, 16)
    const hereB = v128.load(chroma + twoStrides)
    const nextB = f32x4.mul(f32x4.add(hereB, v128.load(chroma + twoStrides, 4)), halves)
    const b0 = f32x4.add(f32x4.mul(low, toB), v128.shuffle<f32>(hereB, nextB, 0, 4, 1, 5))
    const b1 = f32x4.add(f32x4.mul(high, toB), v128.shuffle<f32>(hereB, nextB, 2, 6, 3, 7))
    v128.store(to + twoStrides, is<P, Powered>() ? power4(b0, tableB, whole, first, last) : b0)
    v128.store(to + twoStrides, is<P, Powered>() ? power4(b1, tableB, whole, first, last) : b1, 16)
    from += 8 * sizeof<T>()
    chroma += 16
  }
}
