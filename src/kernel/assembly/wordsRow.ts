import { WHOLE } from './codes'
import { held } from './held'
import { codes4, kept4, past4 } from './layCodes'
import { laidCounts } from './laySettings'
import { rowBytes, width } from './rasterSettings'

/** A finished row as big-endian words of three 10-bit codes at `to`. */
export function wordsRow(row: usize, to: usize): void {
  const green = rowBytes
  const blue = green << 1
  const end = row + ((width as usize) << 2)
  const largest = held(0, f32x4.splat(1023))
  const turned = held(1, i8x16(3, 2, 1, 0, 7, 6, 5, 4, 11, 10, 9, 8, 15, 14, 13, 12))
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
    const redWords = i32x4.shl(codes4(keptR, whole), 22)
    const greenWords = i32x4.shl(codes4(keptG, whole), 12)
    const blueWords = i32x4.shl(codes4(keptB, whole), 2)
    const words = v128.or(v128.or(redWords, greenWords), blueWords)
    v128.store(to, i8x16.swizzle(words, turned))
    const past = f32x4.pmax(f32x4.pmax(past4(r, keptR), past4(g, keptG)), past4(b, keptB))
    clipped = i32x4.sub(clipped, f32x4.ge(past, half))
    to += 16
  }
  v128.store(laidCounts, i32x4.add(v128.load(laidCounts), clipped))
}
