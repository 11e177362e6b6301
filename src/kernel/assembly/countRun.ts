import { chroma4, compositeLuma4 } from './compositePeaks'
import { gatherCounts } from './gather'
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
import { levels4, weighted4 } from './levels'
import { rowBytes } from './rasterSettings'
import { Composite, is, Saturated } from './variants'

/** Counts the pixels outside among those from byte `run` of a row up to byte `end`. */
export function countRun<F, S, C>(
  upper: usize,
  middle: usize,
  lower: usize,
  run: usize,
  end: usize,
): void {
  const green = rowBytes
  const blue = green << 1
  const lumaR = held(2, f32x4.splat(redInLuma))
  const lumaG = held(3, f32x4.splat(greenInLuma))
  const lumaB = held(4, f32x4.splat(blueInLuma))
  const shareR = held(5, f32x4.splat(redShare))
  const shareG = held(6, f32x4.splat(greenShare))
  const shareB = held(7, f32x4.splat(blueShare))
  const kept = held(8, f32x4.splat(saturation))
  const leastRgb = held(9, f32x4.splat(rgbLow))
  const mostRgb = held(10, f32x4.splat(rgbHigh))
  const leastLuma = held(11, f32x4.splat(lumaLow))
  const mostLuma = held(12, f32x4.splat(lumaHigh))
  let below = i32x4.splat(0)
  let above = i32x4.splat(0)
  let outside = i32x4.splat(0)
  for (let i = run; i < end; i += 16) {
    const u = upper + i
    const m = middle + i
    const l = lower + i
    let r = levels4<F>(u, m, l)
    let g = levels4<F>(u + green, m + green, l + green)
    let b = levels4<F>(u + blue, m + blue, l + blue)
    const y = weighted4(r, g, b, lumaR, lumaG, lumaB)
    if (is<S, Saturated>()) {
      const grey = weighted4(r, g, b, shareR, shareG, shareB)
      r = f32x4.add(f32x4.mul(r, kept), grey)
      g = f32x4.add(f32x4.mul(g, kept), grey)
      b = f32x4.add(f32x4.mul(b, kept), grey)
    }
    const low = f32x4.pmin(f32x4.pmin(r, g), b)
    const high = f32x4.pmax(f32x4.pmax(r, g), b)
    let isBelow = v128.or(f32x4.lt(low, leastRgb), f32x4.lt(y, leastLuma))
    let isAbove = v128.or(f32x4.gt(high, mostRgb), f32x4.gt(y, mostLuma))
    if (is<C, Composite>()) {
      const luma = compositeLuma4(r, g, b)
      const chroma = chroma4(r, b, luma)
      const peaksLow = f32x4.lt(f32x4.sub(luma, chroma), f32x4.splat(compositeLow))
      const peaksHigh = f32x4.gt(f32x4.add(luma, chroma), f32x4.splat(compositeHigh))
      isBelow = v128.or(isBelow, peaksLow)
      isAbove = v128.or(isAbove, peaksHigh)
    }
    below = i32x4.sub(below, isBelow)
    above = i32x4.sub(above, isAbove)
    outside = i32x4.sub(outside, v128.or(isBelow, isAbove))
  }
  gatherCounts(below, above, outside)
}
