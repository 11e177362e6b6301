import {
  bToCb,
  bToCr,
  bToY,
  cbCodes,
  chromaMiddle,
  crCodes,
  gToCb,
  gToCr,
  gToY,
  lumaBlack,
  rToCb,
  rToCr,
  rToY,
  yCodes,
} from './codeSettings'
import { deliveredRow } from './deliveredRow'
import { rowBytes, width } from './rasterSettings'
import { highestCode, wholeFloat } from './vectorConstants'

/** Four codes below 2^22 as integers; below 0 and not-a-number give 0. */
// @ts-ignore: decorator
@inline
function whole4(codes: v128, none: v128, whole: v128): v128 {
  return i32x4.sub(f32x4.add(f32x4.pmax(none, codes), whole), whole)
}

// @ts-ignore: decorator
@inline
function weighted4(r: v128, g: v128, b: v128, kr: v128, kg: v128, kb: v128, offset: v128): v128 {
  return f32x4.add(
    f32x4.add(f32x4.mul(r, kr), f32x4.mul(g, kg)),
    f32x4.add(f32x4.mul(b, kb), offset),
  )
}

/** One component of a row: eight codes at a time, kept in 0…1023. Writes whole groups of eight. */
function encodePlane(row: usize, to: usize, kr: f32, kg: f32, kb: f32, offset: f32): void {
  const red = f32x4.splat(kr)
  const green = f32x4.splat(kg)
  const blue = f32x4.splat(kb)
  const offsets = f32x4.splat(offset)
  const none = f32x4.splat(0)
  const whole = f32x4.splat(wholeFloat)
  const highest = i16x8.splat(highestCode)
  const stride = rowBytes
  const end = row + ((width as usize) << 2)
  for (let from = row; from < end; from += 32) {
    const g = from + stride
    const b = g + stride
    const r0 = v128.load(from)
    const g0 = v128.load(g)
    const b0 = v128.load(b)
    const r1 = v128.load(from, 16)
    const g1 = v128.load(g, 16)
    const b1 = v128.load(b, 16)
    const low = weighted4(r0, g0, b0, red, green, blue, offsets)
    const high = weighted4(r1, g1, b1, red, green, blue, offsets)
    const codes = i16x8.narrow_i32x4_s(whole4(low, none, whole), whole4(high, none, whole))
    v128.store(to, i16x8.min_s(codes, highest))
    to += 16
  }
}

/** Delivered rows `first` up to `end` as 10-bit codes, from the start of the three code planes. */
export function deliverBand(first: i32, end: i32): void {
  let at: usize = 0
  for (let y = first; y < end; y++) {
    const row = deliveredRow(y)
    encodePlane(row, yCodes + at, rToY, gToY, bToY, lumaBlack)
    encodePlane(row, cbCodes + at, rToCb, gToCb, bToCb, chromaMiddle)
    encodePlane(row, crCodes + at, rToCr, gToCr, bToCr, chromaMiddle)
    at += (width as usize) << 1
  }
}
