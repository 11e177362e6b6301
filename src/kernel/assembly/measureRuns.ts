import { countRun } from './countRun'
import {
  blueInLuma,
  blueShare,
  greenInLuma,
  greenShare,
  lumaHigh,
  lumaLow,
  redInLuma,
  redShare,
  rgbHigh,
  rgbLow,
  saturation,
  statistics,
} from './levelSettings'
import { levels4, weighted4 } from './levels'
import { rowBytes, width } from './rasterSettings'
import { is, Saturated } from './variants'

/** Bytes of a run: the pixels of a run are counted one by one only if any of them is outside. */
const RUN: usize = 512

// @ts-ignore: decorator
@inline
function gather(at: usize, low: v128, high: v128): void {
  v128.store(at, f32x4.pmin(v128.load(at), low))
  v128.store(at, f32x4.pmax(v128.load(at, 16), high), 16)
}

// @ts-ignore: decorator
@inline
function passes(low: v128, high: v128, least: f32, most: f32): v128 {
  return v128.or(f32x4.lt(low, f32x4.splat(least)), f32x4.gt(high, f32x4.splat(most)))
}

/** `measureRow`, filtered or not (`F`) and saturated or not (`S`). */
export function measureRuns<F, S>(upper: usize, middle: usize, lower: usize): void {
  const green = rowBytes
  const blue = green << 1
  const size = (width as usize) << 2
  const none = f32x4.splat(Infinity)
  const all = f32x4.splat(-Infinity)
  const lumaR = f32x4.splat(redInLuma)
  const lumaG = f32x4.splat(greenInLuma)
  const lumaB = f32x4.splat(blueInLuma)
  const shareR = f32x4.splat(redShare)
  const shareG = f32x4.splat(greenShare)
  const shareB = f32x4.splat(blueShare)
  const kept = f32x4.splat(saturation)
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
      lowR = f32x4.pmin(lowR, r)
      highR = f32x4.pmax(highR, r)
      lowG = f32x4.pmin(lowG, g)
      highG = f32x4.pmax(highG, g)
      lowB = f32x4.pmin(lowB, b)
      highB = f32x4.pmax(highB, b)
      lowY = f32x4.pmin(lowY, y)
      highY = f32x4.pmax(highY, y)
    }
    gather(statistics, lowR, highR)
    gather(statistics + 32, lowG, highG)
    gather(statistics + 64, lowB, highB)
    gather(statistics + 96, lowY, highY)
    const isOutside = v128.or(
      v128.or(passes(lowR, highR, rgbLow, rgbHigh), passes(lowG, highG, rgbLow, rgbHigh)),
      v128.or(passes(lowB, highB, rgbLow, rgbHigh), passes(lowY, highY, lumaLow, lumaHigh)),
    )
    if (v128.any_true(isOutside)) countRun<F, S>(upper, middle, lower, run, end)
  }
}
