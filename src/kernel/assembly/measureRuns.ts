import { chroma4, compositeLuma4 } from './compositePeaks'
import { countRun } from './countRun'
import { gatherEnds } from './gather'
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
import { Composite, is, Saturated } from './variants'

/** Bytes of a run: the pixels of a run are counted one by one only if any of them is outside. */
const RUN: usize = 512

// @ts-ignore: decorator
@inline
function passes(low: v128, high: v128, least: f32, most: f32): v128 {
  return v128.or(f32x4.lt(low, f32x4.splat(least)), f32x4.gt(high, f32x4.splat(most)))
}

/** `measureRow`, filtered or not (`F`), saturated or not (`S`), with composite or not (`C`). */
export function measureRuns<F, S, C>(upper: usize, middle: usize, lower: usize): void {
  const green = rowBytes
  const blue = green << 1
  const size = (width as usize) << 2
  const none = held(0, f32x4.splat(Infinity))
  const all = held(1, f32x4.splat(-Infinity))
  const lumaR = held(2, f32x4.splat(redInLuma))
  const lumaG = held(3, f32x4.splat(greenInLuma))
  const lumaB = held(4, f32x4.splat(blueInLuma))
  const shareR = held(5, f32x4.splat(redShare))
  const shareG = held(6, f32x4.splat(greenShare))
  const shareB = held(7, f32x4.splat(blueShare))
  const kept = held(8, f32x4.splat(saturation))
  for (let run: usize = 0; run < size; run += RUN) {
    const end = min(run + RUN, size)
    let lowR = none
    let lowG = none
    let lowB = none
    let lowY = none
    let highR = all
    let highG = all
    let highB = all
    let highY = all
    let lowC = none
    let highC = all
    for (let i = run; i < end; i += 32) {
      const u = upper + i
      const m = middle + i
      const l = lower + i
      let r0 = levels4<F>(u, m, l)
      let r1 = nextLevels4<F>(u, m, l)
      let g0 = levels4<F>(u + green, m + green, l + green)
      let g1 = nextLevels4<F>(u + green, m + green, l + green)
      let b0 = levels4<F>(u + blue, m + blue, l + blue)
      let b1 = nextLevels4<F>(u + blue, m + blue, l + blue)
      const y0 = weighted4(r0, g0, b0, lumaR, lumaG, lumaB)
      const y1 = weighted4(r1, g1, b1, lumaR, lumaG, lumaB)
      lowY = f32x4.pmin(f32x4.pmin(lowY, y0), y1)
      highY = f32x4.pmax(f32x4.pmax(highY, y0), y1)
      if (is<S, Saturated>()) {
        const grey0 = weighted4(r0, g0, b0, shareR, shareG, shareB)
        r0 = f32x4.add(f32x4.mul(r0, kept), grey0)
        g0 = f32x4.add(f32x4.mul(g0, kept), grey0)
        b0 = f32x4.add(f32x4.mul(b0, kept), grey0)
        const grey1 = weighted4(r1, g1, b1, shareR, shareG, shareB)
        r1 = f32x4.add(f32x4.mul(r1, kept), grey1)
        g1 = f32x4.add(f32x4.mul(g1, kept), grey1)
        b1 = f32x4.add(f32x4.mul(b1, kept), grey1)
      }
      lowR = f32x4.pmin(f32x4.pmin(lowR, r0), r1)
      highR = f32x4.pmax(f32x4.pmax(highR, r0), r1)
      lowG = f32x4.pmin(f32x4.pmin(lowG, g0), g1)
      highG = f32x4.pmax(f32x4.pmax(highG, g0), g1)
      lowB = f32x4.pmin(f32x4.pmin(lowB, b0), b1)
      highB = f32x4.pmax(f32x4.pmax(highB, b0), b1)
      if (is<C, Composite>()) {
        const luma0 = compositeLuma4(r0, g0, b0)
        const chroma0 = chroma4(r0, b0, luma0)
        const luma1 = compositeLuma4(r1, g1, b1)
        const chroma1 = chroma4(r1, b1, luma1)
        lowC = f32x4.pmin(lowC, f32x4.sub(luma0, chroma0))
        lowC = f32x4.pmin(lowC, f32x4.sub(luma1, chroma1))
        highC = f32x4.pmax(highC, f32x4.add(luma0, chroma0))
        highC = f32x4.pmax(highC, f32x4.add(luma1, chroma1))
      }
    }
    gatherEnds(0, lowR, highR)
    gatherEnds(1, lowG, highG)
    gatherEnds(2, lowB, highB)
    gatherEnds(3, lowY, highY)
    let isOutside = v128.or(
      v128.or(passes(lowR, highR, rgbLow, rgbHigh), passes(lowG, highG, rgbLow, rgbHigh)),
      v128.or(passes(lowB, highB, rgbLow, rgbHigh), passes(lowY, highY, lumaLow, lumaHigh)),
    )
    if (is<C, Composite>()) {
      gatherEnds(4, lowC, highC)
      isOutside = v128.or(isOutside, passes(lowC, highC, compositeLow, compositeHigh))
    }
    if (v128.any_true(isOutside)) countRun<F, S, C>(upper, middle, lower, run, end)
  }
}
