import { WHOLE } from './codes'
import { held } from './held'
import { codes4, kept4, past4 } from './layCodes'
import { isLaidLittleEndian, laidCounts } from './laySettings'
import { rowBytes, width } from './rasterSettings'

/** A finished row as 16-bit codes at `to`, R′, G′, B′ of a pixel after each other. */
export function rgb16Row(row: usize, to: usize): void {
  const green = rowBytes
  const blue = green << 1
  const end = row + ((width as usize) << 2)
  const largest = held(0, f32x4.splat(65535))
  const asIs = i8x16(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15)
  const swapped = i8x16(1, 0, 3, 2, 5, 4, 7, 6, 9, 8, 11, 10, 13, 12, 15, 14)
  const order = held(1, isLaidLittleEndian ? asIs : swapped)
  const zero = held(2, f32x4.splat(0))
  const whole = held(3, f32x4.splat(WHOLE))
  const half = held(4, f32x4.splat(0.5))
  let clipped = i32x4.splat(0)
  for (let at = row; at < end; at += 32) {
    const r0 = f32x4.mul(v128.load(at), largest)
    const r1 = f32x4.mul(v128.load(at, 16), largest)
    const g0 = f32x4.mul(v128.load(at + green), largest)
    const g1 = f32x4.mul(v128.load(at + green, 16), largest)
    const b0 = f32x4.mul(v128.load(at + blue), largest)
    const b1 = f32x4.mul(v128.load(at + blue, 16), largest)
    const keptR0 = kept4(r0, zero, largest)
    const keptR1 = kept4(r1, zero, largest)
    const keptG0 = kept4(g0, zero, largest)
    const keptG1 = kept4(g1, zero, largest)
    const keptB0 = kept4(b0, zero, largest)
    const keptB1 = kept4(b1, zero, largest)
    const r = i16x8.narrow_i32x4_u(codes4(keptR0, whole), codes4(keptR1, whole))
    const g = i16x8.narrow_i32x4_u(codes4(keptG0, whole), codes4(keptG1, whole))
    const b = i16x8.narrow_i32x4_u(codes4(keptB0, whole), codes4(keptB1, whole))
    const firstTwo = v128.shuffle<i16>(r, g, 0, 8, 0, 1, 9, 0, 2, 10)
    const nextTwo = v128.shuffle<i16>(r, g, 0, 3, 11, 0, 4, 12, 0, 5)
    const lastTwo = v128.shuffle<i16>(r, g, 13, 0, 6, 14, 0, 7, 15, 0)
    const first = v128.shuffle<i16>(firstTwo, b, 0, 1, 8, 3, 4, 9, 6, 7)
    const next = v128.shuffle<i16>(nextTwo, b, 10, 1, 2, 11, 4, 5, 12, 7)
    const last = v128.shuffle<i16>(lastTwo, b, 0, 13, 2, 3, 14, 5, 6, 15)
    v128.store(to, i8x16.swizzle(first, order))
    v128.store(to, i8x16.swizzle(next, order), 16)
    v128.store(to, i8x16.swizzle(last, order), 32)
    const past0 = f32x4.pmax(f32x4.pmax(past4(r0, keptR0), past4(g0, keptG0)), past4(b0, keptB0))
    const past1 = f32x4.pmax(f32x4.pmax(past4(r1, keptR1), past4(g1, keptG1)), past4(b1, keptB1))
    clipped = i32x4.sub(i32x4.sub(clipped, f32x4.ge(past0, half)), f32x4.ge(past1, half))
    to += 48
  }
  v128.store(laidCounts, i32x4.add(v128.load(laidCounts), clipped))
}
