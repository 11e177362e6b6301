import {
  bToCb,
  bToCr,
  bToY,
  chromaMiddle,
  gToCb,
  gToCr,
  gToY,
  lumaBlack,
  rToCb,
  rToCr,
  rToY,
} from './codeSettings'
import { held } from './held'
import { rowBytes, width } from './rasterSettings'
import { WHOLE_FLOAT, whole4 } from './whole'

// @ts-ignore: decorator
@inline
function weighted4(r: v128, g: v128, b: v128, kr: v128, kg: v128, kb: v128, offset: v128): v128 {
  return f32x4.add(
    f32x4.add(f32x4.mul(r, kr), f32x4.mul(g, kg)),
    f32x4.add(f32x4.mul(b, kb), offset),
  )
}

/**
 * A row buffer as 10-bit codes, u16, kept in 0…1023, to the addresses of the three components.
 * Writes whole groups of eight.
 */
export function encodeRow(row: usize, toY: usize, toCb: usize, toCr: usize): void {
  const redY = held(0, f32x4.splat(rToY))
  const greenY = held(1, f32x4.splat(gToY))
  const blueY = held(2, f32x4.splat(bToY))
  const redCb = held(3, f32x4.splat(rToCb))
  const greenCb = held(4, f32x4.splat(gToCb))
  const blueCb = held(5, f32x4.splat(bToCb))
  const redCr = held(6, f32x4.splat(rToCr))
  const greenCr = held(7, f32x4.splat(gToCr))
  const blueCr = held(8, f32x4.splat(bToCr))
  const black = held(9, f32x4.splat(lumaBlack))
  const middle = held(10, f32x4.splat(chromaMiddle))
  const none = held(11, f32x4.splat(0))
  const whole = held(12, f32x4.splat(WHOLE_FLOAT))
  const highest = held(13, i16x8.splat(1023))
  const stride = rowBytes
  const size = (width as usize) << 1
  for (let i: usize = 0; i < size; i += 16) {
    const r0 = v128.load(row)
    const r1 = v128.load(row, 16)
    const g0 = v128.load(row + stride)
    const g1 = v128.load(row + stride, 16)
    const b0 = v128.load(row + (stride << 1))
    const b1 = v128.load(row + (stride << 1), 16)
    const y0 = whole4(weighted4(r0, g0, b0, redY, greenY, blueY, black), none, whole)
    const y1 = whole4(weighted4(r1, g1, b1, redY, greenY, blueY, black), none, whole)
    v128.store(toY + i, i16x8.min_s(i16x8.narrow_i32x4_s(y0, y1), highest))
    const cb0 = whole4(weighted4(r0, g0, b0, redCb, greenCb, blueCb, middle), none, whole)
    const cb1 = whole4(weighted4(r1, g1, b1, redCb, greenCb, blueCb, middle), none, whole)
    v128.store(toCb + i, i16x8.min_s(i16x8.narrow_i32x4_s(cb0, cb1), highest))
    const cr0 = whole4(weighted4(r0, g0, b0, redCr, greenCr, blueCr, middle), none, whole)
    const cr1 = whole4(weighted4(r1, g1, b1, redCr, greenCr, blueCr, middle), none, whole)
    v128.store(toCr + i, i16x8.min_s(i16x8.narrow_i32x4_s(cr0, cr1), highest))
    row += 32
  }
}
