import { bent4, fromGrey4, quotient4, within4 } from './bend'
import { chroma4, compositeLuma4 } from './compositePeaks'
import { held } from './held'
import { laidCounts } from './laySettings'
import { blueShare, greenShare, redShare, saturation } from './levelSettings'
import { weighted4 } from './levels'
import {
  blueOfLimitedLuma,
  darkestGrey,
  greenOfLimitedLuma,
  leastMove,
  leastPeak,
  lightestGrey,
  limitsComposite,
  limitsLuma,
  limitsRgb,
  lumaFrom,
  lumaKnee,
  lumaTo,
  mostPeak,
  peakKnee,
  redOfLimitedLuma,
  rgbFrom,
  rgbKnee,
  rgbTo,
} from './limitSettings'
import { rowBytes, width } from './rasterSettings'

/** Saturation of a delivered row, in its place. */
export function saturateRow(row: usize): void {
  const green = rowBytes
  const blue = green << 1
  const end = row + ((width as usize) << 2)
  const shareR = held(0, f32x4.splat(redShare))
  const shareG = held(1, f32x4.splat(greenShare))
  const shareB = held(2, f32x4.splat(blueShare))
  const kept = held(3, f32x4.splat(saturation))
  for (let at = row; at < end; at += 16) {
    const r = v128.load(at)
    const g = v128.load(at + green)
    const b = v128.load(at + blue)
    const grey = weighted4(r, g, b, shareR, shareG, shareB)
    v128.store(at, f32x4.add(f32x4.mul(r, kept), grey))
    v128.store(at + green, f32x4.add(f32x4.mul(g, kept), grey))
    v128.store(at + blue, f32x4.add(f32x4.mul(b, kept), grey))
  }
}

/** The part of the way from `grey` to a peak above it that is kept, where the most is `limit`. */
// @ts-ignore: decorator
@inline
function keptOfPeak4(peak: v128, grey: v128, limit: v128): v128 {
  const most = f32x4.pmax(limit, grey)
  const knee = f32x4.pmin(f32x4.splat(peakKnee), f32x4.sub(most, grey))
  const kept = f32x4.pmin(peak, f32x4.sub(most, knee))
  const past = f32x4.sub(peak, kept)
  const bent = f32x4.add(kept, bent4(past, knee))
  const part = quotient4(f32x4.sub(bent, grey), f32x4.sub(peak, grey))
  const one = f32x4.splat(1)
  return v128.bitselect(part, one, f32x4.gt(past, f32x4.splat(0)))
}

/** A saturated row through the limiter, in its place: `limitColour`, four pixels at a time. */
export function limitRow(row: usize): void {
  const green = rowBytes
  const blue = green << 1
  const end = row + ((width as usize) << 2)
  const from = held(0, f32x4.splat(rgbFrom))
  const to = held(1, f32x4.splat(rgbTo))
  const move = held(2, f32x4.splat(leastMove))
  const lumaR = held(3, f32x4.splat(redOfLimitedLuma))
  const lumaG = held(4, f32x4.splat(greenOfLimitedLuma))
  const lumaB = held(5, f32x4.splat(blueOfLimitedLuma))
  const darkest = held(6, f32x4.splat(darkestGrey))
  const lightest = held(7, f32x4.splat(lightestGrey))
  // Before these no knee begins, whatever the colour.
  const safeMost = held(8, f32x4.splat(mostPeak - peakKnee))
  const safeLeast = held(9, f32x4.splat(-leastPeak - peakKnee))
  let limited = i32x4.splat(0)
  for (let at = row; at < end; at += 16) {
    const oldR = v128.load(at)
    const oldG = v128.load(at + green)
    const oldB = v128.load(at + blue)
    let r = oldR
    let g = oldG
    let b = oldB
    let isMoved = false
    if (limitsRgb) {
      const keptR = within4(r, from, to)
      const keptG = within4(g, from, to)
      const keptB = within4(b, from, to)
      const pastR = f32x4.sub(r, keptR)
      const pastG = f32x4.sub(g, keptG)
      const pastB = f32x4.sub(b, keptB)
      if (v128.any_true(v128.or(v128.or(pastR, pastG), pastB))) {
        const knee = f32x4.splat(rgbKnee)
        r = f32x4.add(keptR, bent4(pastR, knee))
        g = f32x4.add(keptG, bent4(pastG, knee))
        b = f32x4.add(keptB, bent4(pastB, knee))
        isMoved = true
      }
    }
    if (limitsLuma) {
      const luma = weighted4(r, g, b, lumaR, lumaG, lumaB)
      const kept = within4(luma, f32x4.splat(lumaFrom), f32x4.splat(lumaTo))
      const past = f32x4.sub(luma, kept)
      if (v128.any_true(past)) {
        const bent = f32x4.add(kept, bent4(past, f32x4.splat(lumaKnee)))
        const grey = v128.bitselect(darkest, lightest, f32x4.gt(past, f32x4.splat(0)))
        const ratio = quotient4(f32x4.abs(f32x4.sub(bent, grey)), f32x4.abs(f32x4.sub(luma, grey)))
        const part = v128.bitselect(ratio, f32x4.splat(1), f32x4.ne(past, f32x4.splat(0)))
        r = fromGrey4(r, grey, part)
        g = fromGrey4(g, grey, part)
        b = fromGrey4(b, grey, part)
        isMoved = true
      }
    }
    if (limitsComposite) {
      const luma = compositeLuma4(r, g, b)
      const chroma = chroma4(r, b, luma)
      const most = f32x4.add(luma, chroma)
      const least = f32x4.sub(chroma, luma)
      if (v128.any_true(v128.or(f32x4.gt(most, safeMost), f32x4.gt(least, safeLeast)))) {
        const grey = within4(weighted4(r, g, b, lumaR, lumaG, lumaB), darkest, lightest)
        const up = keptOfPeak4(most, grey, f32x4.splat(mostPeak))
        const down = keptOfPeak4(least, f32x4.neg(grey), f32x4.splat(-leastPeak))
        const part = f32x4.pmin(up, down)
        const isLess = f32x4.lt(part, f32x4.splat(1))
        r = v128.bitselect(fromGrey4(r, grey, part), r, isLess)
        g = v128.bitselect(fromGrey4(g, grey, part), g, isLess)
        b = v128.bitselect(fromGrey4(b, grey, part), b, isLess)
        isMoved = true
      }
    }
    if (!isMoved) continue
    v128.store(at, r)
    v128.store(at + green, g)
    v128.store(at + blue, b)
    const moveR = f32x4.abs(f32x4.sub(r, oldR))
    const moveG = f32x4.abs(f32x4.sub(g, oldG))
    const moveB = f32x4.abs(f32x4.sub(b, oldB))
    const most = f32x4.pmax(f32x4.pmax(moveR, moveG), moveB)
    limited = i32x4.sub(limited, f32x4.gt(most, move))
  }
  v128.store(laidCounts, i32x4.add(v128.load(laidCounts, 16), limited), 16)
}
