import { WHOLE } from './codes'
import { held } from './held'
import { codes4, kept4, past4 } from './layCodes'
import { isLaidLittleEndian, laidCounts } from './laySettings'
import { rowBytes, width } from './rasterSettings'

/**
 * A finished row as 16-bit codes at `to`, R′, G′, B′ of a pixel after each other: two pixels of
 * 64 bits a vector, of which the bytes that are wanted come first, in their order.
 */
export function rgb16Row(row: usize, to: usize): void {
  const green = rowBytes
  const blue = green << 1
  const end = row + ((width as usize) << 2)
  const largest = held(0, f32x4.splat(65535))
  const little = i8x16(0, 1, 2, 3, 4, 5, 8, 9, 10, 11, 12, 13, 6, 7, 14, 15)
  const big = i8x16(1, 0, 3, 2, 5, 4, 9, 8, 11, 10, 13, 12, 6, 7, 14, 15)
  const order = held(1, isLaidLittleEndian ? little : big)
  const zero = held(2, f32x4.splat(0))
  const whole = held(3, f32x4.splat(WHOLE))
  const half = held(4, f32x4.splat(0.5))
  let clipped = i32x4.splat(0)
  for (let at = row; at < end; at += 16) {
    const r = f32x4.mul(v128.load(at), largest)
    const g = f32x4.mul(v128.load(at + green), largest)
    const b = f32x4.mul(v128.load(at + blue), largest)
    const keptR = kept4(r, zero, largest)
    const keptG = kept4(g, zero, largest)
    const keptB = kept4(b, zero, largest)
    const pairs = v128.or(codes4(keptR, whole), i32x4.shl(codes4(keptG, whole), 16))
    const blues = codes4(keptB, whole)
    const first = v128.shuffle<i32>(pairs, blues, 0, 4, 1, 5)
    const last = v128.shuffle<i32>(pairs, blues, 2, 6, 3, 7)
    v128.store(to, i8x16.swizzle(first, order))
    v128.store(to, i8x16.swizzle(last, order), 12)
    const past = f32x4.pmax(f32x4.pmax(past4(r, keptR), past4(g, keptG)), past4(b, keptB))
    clipped = i32x4.sub(clipped, f32x4.ge(past, half))
    to += 24
  }
  v128.store(laidCounts, i32x4.add(v128.load(laidCounts), clipped))
}
