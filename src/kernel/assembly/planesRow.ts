import { codesPerLevel, lumaBlack } from './codeSettings'
import { WHOLE } from './codes'
import { held } from './held'
import { codes4, exact4, kept4, past4, storeCodes8 } from './layCodes'
import {
  blueOfLuma,
  differenceRow,
  greenOfLuma,
  laidCounts,
  layLargest,
  redOfLuma,
} from './laySettings'
import { weighted4 } from './levels'
import { rowBytes, width } from './rasterSettings'

/** Y′ of a finished row as codes at `to`; B′ − Y′ and R′ − Y′ into the difference row. */
export function planesRow<T>(row: usize, to: usize): void {
  const green = rowBytes
  const blue = green << 1
  const size = (width as usize) << 2
  const lumaR = held(0, f32x4.splat(redOfLuma))
  const lumaG = held(1, f32x4.splat(greenOfLuma))
  const lumaB = held(2, f32x4.splat(blueOfLuma))
  const scale = held(3, f32x4.splat(codesPerLevel))
  const black = held(4, f32x4.splat(lumaBlack))
  const largest = held(5, f32x4.splat(layLargest))
  const zero = held(6, f32x4.splat(0))
  const whole = held(7, f32x4.splat(WHOLE))
  const half = held(8, f32x4.splat(0.5))
  let clipped = i32x4.splat(0)
  for (let i: usize = 0; i < size; i += 32) {
    const at = row + i
    const r0 = v128.load(at)
    const b0 = v128.load(at + blue)
    const y0 = weighted4(r0, v128.load(at + green), b0, lumaR, lumaG, lumaB)
    const r1 = v128.load(at, 16)
    const b1 = v128.load(at + blue, 16)
    const y1 = weighted4(r1, v128.load(at + green, 16), b1, lumaR, lumaG, lumaB)
    const difference = differenceRow + i
    v128.store(difference, f32x4.sub(b0, y0))
    v128.store(difference, f32x4.sub(b1, y1), 16)
    v128.store(difference + green, f32x4.sub(r0, y0))
    v128.store(difference + green, f32x4.sub(r1, y1), 16)
    const first = exact4(y0, scale, black)
    const last = exact4(y1, scale, black)
    const keptFirst = kept4(first, zero, largest)
    const keptLast = kept4(last, zero, largest)
    storeCodes8<T>(to, codes4(keptFirst, whole), codes4(keptLast, whole))
    clipped = i32x4.sub(clipped, f32x4.ge(past4(first, keptFirst), half))
    clipped = i32x4.sub(clipped, f32x4.ge(past4(last, keptLast), half))
    to += 8 * sizeof<T>()
  }
  v128.store(laidCounts, i32x4.add(v128.load(laidCounts), clipped))
}
