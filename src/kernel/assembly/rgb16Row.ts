import { held } from './held'
import { codes4, past4 } from './layCodes'
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
  let clipped = i32x4.splat(0)
  for (let at = row; at < end; at += 32) {
    const r0 = f32x4.mul(v128.load(at), largest)
    const r1 = f32x4.mul(v128.load(at, 16), largest)
    const g0 = f32x4.mul(v128.load(at + green), largest)
    const g1 = f32x4.mul(v128.load(at + green, 16), largest)
    const b0 = f32x4.mul(v128.load(at + blue), largest)
    const b1 = f32x4.mul(v128.load(at + blue, 16), largest)
    const r = i16x8.narrow_i32x4_u(codes4(r0, largest), codes4(r1, largest))
    const g = i16x8.narrow_i32x4_u(codes4(g0, largest), codes4(g1, largest))
    const b = i16x8.narrow_i32x4_u(codes4(b0, largest), codes4(b1, largest))
    const firstTwo = v128.shuffle<i16>(r, g, 0, 8, 0, 1, 9, 0, 2, 10)
    const nextTwo = v128.shuffle<i16>(r, g, 0, 3, 11, 0, 4, 12, 0, 5)
    const lastTwo = v128.shuffle<i16>(r, g, 13, 0, 6, 14, 0, 7, 15, 0)
    const first = v128.shuffle<i16>(firstTwo, b, 0, 1, 8, 3, 4, 9, 6, 7)
    const next = v128.shuffle<i16>(nextTwo, b, 10, 1, 2, 11, 4, 5, 12, 7)
    const last = v128.shuffle<i16>(lastTwo, b, 0, 13, 2, 3, 14, 5, 6, 15)
    v128.store(to, i8x16.swizzle(first, order))
    v128.store(to, i8x16.swizzle(next, order), 16)
    v128.store(to, i8x16.swizzle(last, order), 32)
    const past0 = v128.or(v128.or(past4(r0, largest), past4(g0, largest)), past4(b0, largest))
    const past1 = v128.or(v128.or(past4(r1, largest), past4(g1, largest)), past4(b1, largest))
    clipped = i32x4.sub(i32x4.sub(clipped, past0), past1)
    to += 48
  }
  v128.store(laidCounts, i32x4.add(v128.load(laidCounts), clipped))
}
