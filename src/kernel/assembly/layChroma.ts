import { cbPerDifference, chromaMiddle, crPerDifference } from './codeSettings'
import { WHOLE } from './codes'
import { held } from './held'
import { codes4, exact4, kept4, storeCodes8 } from './layCodes'
import { differenceRow, heldRow, layLargest } from './laySettings'
import { rowBytes, width } from './rasterSettings'
import { repeatEnds } from './rowEnds'
import { Alone, is, Lower, Upper } from './variants'

/** Four times the differences at the even columns from `at` on, by the taps 1 2 1: sited left. */
// @ts-ignore: decorator
@inline
function halved4(at: usize): v128 {
  const a = v128.load(at)
  const b = v128.load(at, 16)
  const even = v128.shuffle<f32>(a, b, 0, 2, 4, 6)
  const right = v128.shuffle<f32>(a, b, 1, 3, 5, 7)
  const left = v128.shuffle<f32>(v128.load(at - 4), v128.load(at + 12), 0, 2, 4, 6)
  return f32x4.add(f32x4.add(left, right), f32x4.add(even, even))
}

/**
 * One plane of the difference row at half the width as codes at `to`: `Alone`; or of two lines, of
 * which the `Upper` is held and the `Lower` makes codes of both. `perDifference` is of what is summed.
 */
// @ts-ignore: decorator
@inline
function halvedPlane<T, L>(plane: usize, perDifference: f32, to: usize): void {
  repeatEnds(differenceRow + plane, width, 1)
  let from = differenceRow + plane
  let other = heldRow + plane
  const end = from + ((width as usize) << 2)
  const scale = held(0, f32x4.splat(perDifference))
  const middle = held(1, f32x4.splat(chromaMiddle))
  const largest = held(2, f32x4.splat(layLargest))
  const zero = held(3, f32x4.splat(0))
  const whole = held(4, f32x4.splat(WHOLE))
  for (; from < end; from += 64) {
    let first = halved4(from)
    let last = halved4(from + 32)
    if (is<L, Upper>()) {
      v128.store(other, first)
      v128.store(other, last, 16)
      other += 32
      continue
    }
    if (is<L, Lower>()) {
      first = f32x4.add(first, v128.load(other))
      last = f32x4.add(last, v128.load(other, 16))
      other += 32
    }
    const a = codes4(kept4(exact4(first, scale, middle), zero, largest), whole)
    const b = codes4(kept4(exact4(last, scale, middle), zero, largest), whole)
    storeCodes8<T>(to, a, b)
    to += 8 * sizeof<T>()
  }
}

/** The differences at half the width: see `halvedPlane`. */
export function layHalved<T, L>(toCb: usize, toCr: usize): void {
  const taps: f32 = is<L, Alone>() ? 4 : 8
  halvedPlane<T, L>(0, cbPerDifference / taps, toCb)
  halvedPlane<T, L>(rowBytes, crPerDifference / taps, toCr)
}

// @ts-ignore: decorator
@inline
function wholePlane<T>(plane: usize, perDifference: f32, to: usize): void {
  const scale = held(0, f32x4.splat(perDifference))
  const middle = held(1, f32x4.splat(chromaMiddle))
  const largest = held(2, f32x4.splat(layLargest))
  const zero = held(3, f32x4.splat(0))
  const whole = held(4, f32x4.splat(WHOLE))
  let from = differenceRow + plane
  const end = from + ((width as usize) << 2)
  for (; from < end; from += 32) {
    const a = codes4(kept4(exact4(v128.load(from), scale, middle), zero, largest), whole)
    const b = codes4(kept4(exact4(v128.load(from, 16), scale, middle), zero, largest), whole)
    storeCodes8<T>(to, a, b)
    to += 8 * sizeof<T>()
  }
}

/** The differences of every column as codes. */
export function layWhole<T>(toCb: usize, toCr: usize): void {
  wholePlane<T>(0, cbPerDifference, toCb)
  wholePlane<T>(rowBytes, crPerDifference, toCr)
}
