import {
  bCodes,
  cbCodes,
  cbPerDifference,
  chromaMiddle,
  codesPerLevel,
  crCodes,
  crPerDifference,
  gCodes,
  lumaBlack,
  rCodes,
  yCodes,
} from './codeSettings'
import { codes8, WHOLE } from './codes'
import { chroma4, compositeLuma4 } from './compositePeaks'
import { gatherCounts, gatherEnds } from './gather'
import { held } from './held'
import {
  blueInLuma,
  blueShare,
  compositeHigh,
  compositeLow,
  greenInLuma,
  greenShare,
  lumaHigh,
  lumaLow,
  redInLuma,
  redShare,
  rgbHigh,
  rgbLow,
  saturation,
} from './levelSettings'
import { levels4, nextLevels4, weighted4 } from './levels'
import { rowBytes, width } from './rasterSettings'
import { Composite, Delivered, is, Kept, Measured, Saturated } from './variants'

/** Where one level, or else another, is less than what it must not be. */
// @ts-ignore: decorator
@inline
function anyLess(a: v128, least: v128, b: v128, leastOfB: v128): v128 {
  return v128.or(f32x4.lt(a, least), f32x4.lt(b, leastOfB))
}

/**
 * Delivered levels (`F` says of which rows) into the statistics and as codes, as `W` asks, saturated
 * or not (`S`), with composite or not (`C`). Codes go from byte `at` of each of the band's planes.
 * Where levels are measured the seven samples after the last must be no numbers.
 */
export function levelsRow<F, W, S, C>(upper: usize, middle: usize, lower: usize, at: usize): void {
  const green = rowBytes
  const blue = green << 1
  const size = (width as usize) << 2
  const lumaR = held(0, f32x4.splat(redInLuma))
  const lumaG = held(1, f32x4.splat(greenInLuma))
  const lumaB = held(2, f32x4.splat(blueInLuma))
  const shareR = held(3, f32x4.splat(redShare))
  const shareG = held(4, f32x4.splat(greenShare))
  const shareB = held(5, f32x4.splat(blueShare))
  const kept = held(6, f32x4.splat(saturation))
  const leastRgb = held(7, f32x4.splat(rgbLow))
  const mostRgb = held(8, f32x4.splat(rgbHigh))
  const leastLuma = held(9, f32x4.splat(lumaLow))
  const mostLuma = held(10, f32x4.splat(lumaHigh))
  const black = held(11, f32x4.splat(lumaBlack + WHOLE))
  const swing = held(12, f32x4.splat(codesPerLevel))
  const zeroChroma = held(13, f32x4.splat(chromaMiddle + WHOLE))
  const perB = held(14, f32x4.splat(cbPerDifference))
  const perR = held(15, f32x4.splat(crPerDifference))
  const whole = held(16, f32x4.splat(WHOLE))
  const highest = held(17, i16x8.splat(1023))
  let lowR = held(18, f32x4.splat(Infinity))
  let lowG = lowR
  let lowB = lowR
  let lowY = lowR
  let lowC = lowR
  let highR = held(19, f32x4.splat(-Infinity))
  let highG = highR
  let highB = highR
  let highY = highR
  let highC = highR
  let below = i32x4.splat(0)
  let above = i32x4.splat(0)
  let outside = i32x4.splat(0)
  for (let i: usize = 0; i < size; i += 32) {
    const u = upper + i
    const m = middle + i
    const l = lower + i
    let r0 = levels4<F>(u, m, l)
    let g0 = levels4<F>(u + green, m + green, l + green)
    let b0 = levels4<F>(u + blue, m + blue, l + blue)
    const y0 = weighted4(r0, g0, b0, lumaR, lumaG, lumaB)
    if (is<S, Saturated>()) {
      const grey0 = weighted4(r0, g0, b0, shareR, shareG, shareB)
      r0 = f32x4.add(f32x4.mul(r0, kept), grey0)
      g0 = f32x4.add(f32x4.mul(g0, kept), grey0)
      b0 = f32x4.add(f32x4.mul(b0, kept), grey0)
    }
    let r1 = nextLevels4<F>(u, m, l)
    let g1 = nextLevels4<F>(u + green, m + green, l + green)
    let b1 = nextLevels4<F>(u + blue, m + blue, l + blue)
    const y1 = weighted4(r1, g1, b1, lumaR, lumaG, lumaB)
    if (is<S, Saturated>()) {
      const grey1 = weighted4(r1, g1, b1, shareR, shareG, shareB)
      r1 = f32x4.add(f32x4.mul(r1, kept), grey1)
      g1 = f32x4.add(f32x4.mul(g1, kept), grey1)
      b1 = f32x4.add(f32x4.mul(b1, kept), grey1)
    }
    if (!is<W, Measured>()) {
      const to = at + (i >> 1)
      if (!is<W, Delivered>()) {
        v128.store(rCodes + to, codes8(r0, r1, swing, black, whole, highest))
        v128.store(gCodes + to, codes8(g0, g1, swing, black, whole, highest))
        v128.store(bCodes + to, codes8(b0, b1, swing, black, whole, highest))
      }
      v128.store(yCodes + to, codes8(y0, y1, swing, black, whole, highest))
      const cb0 = f32x4.sub(b0, y0)
      const cb1 = f32x4.sub(b1, y1)
      v128.store(cbCodes + to, codes8(cb0, cb1, perB, zeroChroma, whole, highest))
      const cr0 = f32x4.sub(r0, y0)
      const cr1 = f32x4.sub(r1, y1)
      v128.store(crCodes + to, codes8(cr0, cr1, perR, zeroChroma, whole, highest))
    }
    if (is<W, Delivered>() || is<W, Kept>()) continue
    const low0 = f32x4.pmin(f32x4.pmin(r0, g0), b0)
    const high0 = f32x4.pmax(f32x4.pmax(r0, g0), b0)
    const low1 = f32x4.pmin(f32x4.pmin(r1, g1), b1)
    const high1 = f32x4.pmax(f32x4.pmax(r1, g1), b1)
    let isBelow0 = anyLess(low0, leastRgb, y0, leastLuma)
    let isAbove0 = anyLess(mostRgb, high0, mostLuma, y0)
    let isBelow1 = anyLess(low1, leastRgb, y1, leastLuma)
    let isAbove1 = anyLess(mostRgb, high1, mostLuma, y1)
    if (is<C, Composite>()) {
      const luma0 = compositeLuma4(r0, g0, b0)
      const chroma0 = chroma4(r0, b0, luma0)
      const luma1 = compositeLuma4(r1, g1, b1)
      const chroma1 = chroma4(r1, b1, luma1)
      const least0 = f32x4.sub(luma0, chroma0)
      const most0 = f32x4.add(luma0, chroma0)
      const least1 = f32x4.sub(luma1, chroma1)
      const most1 = f32x4.add(luma1, chroma1)
      lowC = f32x4.pmin(f32x4.pmin(lowC, least0), least1)
      highC = f32x4.pmax(f32x4.pmax(highC, most0), most1)
      const leastPeak = f32x4.splat(compositeLow)
      const mostPeak = f32x4.splat(compositeHigh)
      isBelow0 = v128.or(isBelow0, f32x4.lt(least0, leastPeak))
      isAbove0 = v128.or(isAbove0, f32x4.gt(most0, mostPeak))
      isBelow1 = v128.or(isBelow1, f32x4.lt(least1, leastPeak))
      isAbove1 = v128.or(isAbove1, f32x4.gt(most1, mostPeak))
    }
    below = i32x4.sub(below, isBelow0)
    above = i32x4.sub(above, isAbove0)
    outside = i32x4.sub(outside, v128.or(isBelow0, isAbove0))
    below = i32x4.sub(below, isBelow1)
    above = i32x4.sub(above, isAbove1)
    outside = i32x4.sub(outside, v128.or(isBelow1, isAbove1))
    lowR = f32x4.pmin(f32x4.pmin(lowR, r0), r1)
    highR = f32x4.pmax(f32x4.pmax(highR, r0), r1)
    lowG = f32x4.pmin(f32x4.pmin(lowG, g0), g1)
    highG = f32x4.pmax(f32x4.pmax(highG, g0), g1)
    lowB = f32x4.pmin(f32x4.pmin(lowB, b0), b1)
    highB = f32x4.pmax(f32x4.pmax(highB, b0), b1)
    lowY = f32x4.pmin(f32x4.pmin(lowY, y0), y1)
    highY = f32x4.pmax(f32x4.pmax(highY, y0), y1)
  }
  if (is<W, Delivered>() || is<W, Kept>()) return
  gatherEnds(0, lowR, highR)
  gatherEnds(1, lowG, highG)
  gatherEnds(2, lowB, highB)
  gatherEnds(3, lowY, highY)
  if (is<C, Composite>()) gatherEnds(4, lowC, highC)
  gatherCounts(below, above, outside)
}
