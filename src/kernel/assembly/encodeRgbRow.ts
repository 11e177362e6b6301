import { lumaBlack } from './codeSettings'
import { held } from './held'
import { blueShare, greenShare, redShare, saturation } from './levelSettings'
import { weighted4 } from './levels'
import { rowBytes, width } from './rasterSettings'
import { WHOLE_FLOAT, whole4 } from './whole'

/** Codes from black to peak in 10 bits, narrow range: BT.709-6 §4.6. */
// @ts-ignore: decorator
@inline
const SWING: f32 = 876

/** A row buffer, saturated, as 10-bit codes of R′, G′, B′ (u16, kept in 0…1023), in eights. */
export function encodeRgbRow(row: usize, toR: usize, toG: usize, toB: usize): void {
  const shareR = held(0, f32x4.splat(redShare * SWING))
  const shareG = held(1, f32x4.splat(greenShare * SWING))
  const shareB = held(2, f32x4.splat(blueShare * SWING))
  const kept = held(3, f32x4.splat(saturation * SWING))
  const black = held(4, f32x4.splat(lumaBlack))
  const none = held(5, f32x4.splat(0))
  const whole = held(6, f32x4.splat(WHOLE_FLOAT))
  const highest = held(7, i16x8.splat(1023))
  const stride = rowBytes
  const size = (width as usize) << 1
  for (let i: usize = 0; i < size; i += 16) {
    const r0 = v128.load(row)
    const r1 = v128.load(row, 16)
    const g0 = v128.load(row + stride)
    const g1 = v128.load(row + stride, 16)
    const b0 = v128.load(row + (stride << 1))
    const b1 = v128.load(row + (stride << 1), 16)
    const grey0 = f32x4.add(weighted4(r0, g0, b0, shareR, shareG, shareB), black)
    const grey1 = f32x4.add(weighted4(r1, g1, b1, shareR, shareG, shareB), black)
    const red0 = whole4(f32x4.add(f32x4.mul(r0, kept), grey0), none, whole)
    const red1 = whole4(f32x4.add(f32x4.mul(r1, kept), grey1), none, whole)
    v128.store(toR + i, i16x8.min_s(i16x8.narrow_i32x4_s(red0, red1), highest))
    const green0 = whole4(f32x4.add(f32x4.mul(g0, kept), grey0), none, whole)
    const green1 = whole4(f32x4.add(f32x4.mul(g1, kept), grey1), none, whole)
    v128.store(toG + i, i16x8.min_s(i16x8.narrow_i32x4_s(green0, green1), highest))
    const blue0 = whole4(f32x4.add(f32x4.mul(b0, kept), grey0), none, whole)
    const blue1 = whole4(f32x4.add(f32x4.mul(b1, kept), grey1), none, whole)
    v128.store(toB + i, i16x8.min_s(i16x8.narrow_i32x4_s(blue0, blue1), highest))
    row += 32
  }
}
