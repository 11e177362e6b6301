import { curvesAt, hasPeaks, limitsAt, weightsAt } from './censusQuerySettings'

/** The last piece of a curve, as many as in `core/census/gradeCurves.ts`. */
// @ts-ignore: decorator
@inline
const LAST_PIECE: i32 = 255

/** Of curves: starts, pieces to 1 (four each), and each channel's pieces: low, high, slope, unused. */
// @ts-ignore: decorator
@inline
const SCALES: usize = 16
// @ts-ignore: decorator
@inline
const PIECES: usize = 32
// @ts-ignore: decorator
@inline
const CHANNEL: usize = 256 * 16

/** Of weights: of luma, U and V of the composite signal, after those of R′, G′, B′, Y′. */
// @ts-ignore: decorator
@inline
const COMPOSITE: usize = 6 * 16

/** Where bounds stand: low and high of R′, G′, B′, Y′; with peaks low and high of the two. */
const bounds = memory.data(4 * 16, 16)

/** What the bounds of figures settle. */
// @ts-ignore: decorator
@inline
export const INSIDE: i32 = 0
// @ts-ignore: decorator
@inline
export const STRADDLING: i32 = 1
// @ts-ignore: decorator
@inline
export const OUTSIDE: i32 = 2

/** Bounds of R′, G′, B′, Y′ (`part` 0), and of the lowest and the highest composite peak (1). */
// @ts-ignore: decorator
@inline
export function lowOf(part: usize): v128 {
  return v128.load(bounds + (part << 5))
}
// @ts-ignore: decorator
@inline
export function highOf(part: usize): v128 {
  return v128.load(bounds + (part << 5), 16)
}

/** How far out one of them is: the high bound, or the low one with its sign turned. */
// @ts-ignore: decorator
@inline
export function farthest(part: usize, lane: i32, isHigh: bool): f32 {
  const at = bounds + (part << 5) + ((lane as usize) << 2)
  return isHigh ? load<f32>(at, 16) : -load<f32>(at)
}

/** How far three levels are along their curves, in pieces. */
// @ts-ignore: decorator
@inline
function placesOf(levels: usize): v128 {
  const from = f32x4.sub(v128.load(levels), v128.load(curvesAt))
  return f32x4.mul(from, v128.load(curvesAt, SCALES))
}

// @ts-ignore: decorator
@inline
function piecesOf(places: v128): v128 {
  const whole = i32x4.trunc_sat_f32x4_s(places)
  return i32x4.max_s(i32x4.min_s(whole, i32x4.splat(LAST_PIECE)), i32x4.splat(0))
}

// @ts-ignore: decorator
@inline
function pieceAt(channel: usize, piece: i32): usize {
  return curvesAt + PIECES + channel * CHANNEL + ((piece as usize) << 4)
}

/** Three sums of a channel each: the negative weights take the other end. */
// @ts-ignore: decorator
@inline
function weigh(weights: usize, r: v128, otherR: v128, g: v128, otherG: v128, b: v128, otherB: v128): v128 {
  const red = f32x4.add(
    f32x4.mul(v128.load(weights), r),
    f32x4.mul(v128.load(weights, 16), otherR),
  )
  const green = f32x4.add(
    f32x4.mul(v128.load(weights, 32), g),
    f32x4.mul(v128.load(weights, 48), otherG),
  )
  const blue = f32x4.add(
    f32x4.mul(v128.load(weights, 64), b),
    f32x4.mul(v128.load(weights, 80), otherB),
  )
  return f32x4.add(f32x4.add(red, green), blue)
}

/** What f32 may round off, taken away on the far side (as `outward` in `censusData.ts`). */
// @ts-ignore: decorator
@inline
function f32Below(value: f64): f32 {
  return (value - abs(value) * 2e-7) as f32
}
// @ts-ignore: decorator
@inline
function f32Above(value: f64): f32 {
  return (value + abs(value) * 2e-7) as f32
}

/** From bounds of luma, U and V the bounds of the lowest and the highest peak. */
function findPeaks(least: v128, most: v128): void {
  const y0 = f32x4.extract_lane(least, 0) as f64
  const y1 = f32x4.extract_lane(most, 0) as f64
  const u0 = f32x4.extract_lane(least, 1) as f64
  const u1 = f32x4.extract_lane(most, 1) as f64
  const v0 = f32x4.extract_lane(least, 2) as f64
  const v1 = f32x4.extract_lane(most, 2) as f64
  const nearU = max(0, max(u0, -u1))
  const nearV = max(0, max(v0, -v1))
  const farU = max(-u0, u1)
  const farV = max(-v0, v1)
  const weakest = Math.sqrt(nearU * nearU + nearV * nearV)
  const strongest = Math.sqrt(farU * farU + farV * farV)
  store<f32>(bounds, f32Below(y0 - strongest), 32)
  store<f32>(bounds, f32Below(y0 + weakest), 36)
  store<f32>(bounds, f32Above(y1 - weakest), 48)
  store<f32>(bounds, f32Above(y1 + strongest), 52)
}

/**
 * Bounds the figures of a colour (three levels) or a box (low, then high R′, G′, B′), read back by
 * `lowOf` and `highOf`.
 */
// @ts-ignore: decorator
@inline
export function bound(levels: usize, isBox: bool): void {
  const places = placesOf(levels)
  const pieces = piecesOf(places)
  const along = f32x4.sub(places, f32x4.convert_i32x4_s(pieces))
  let r = pieceAt(0, i32x4.extract_lane(pieces, 0))
  let g = pieceAt(1, i32x4.extract_lane(pieces, 1))
  let b = pieceAt(2, i32x4.extract_lane(pieces, 2))
  let riseR = f32x4.extract_lane(along, 0) * load<f32>(r, 8)
  let riseG = f32x4.extract_lane(along, 1) * load<f32>(g, 8)
  let riseB = f32x4.extract_lane(along, 2) * load<f32>(b, 8)
  const r0 = f32x4.splat(load<f32>(r) + riseR)
  const g0 = f32x4.splat(load<f32>(g) + riseG)
  const b0 = f32x4.splat(load<f32>(b) + riseB)
  if (isBox) {
    const highPlaces = placesOf(levels + 12)
    const highPieces = piecesOf(highPlaces)
    const highAlong = f32x4.sub(highPlaces, f32x4.convert_i32x4_s(highPieces))
    r = pieceAt(0, i32x4.extract_lane(highPieces, 0))
    g = pieceAt(1, i32x4.extract_lane(highPieces, 1))
    b = pieceAt(2, i32x4.extract_lane(highPieces, 2))
    riseR = f32x4.extract_lane(highAlong, 0) * load<f32>(r, 8)
    riseG = f32x4.extract_lane(highAlong, 1) * load<f32>(g, 8)
    riseB = f32x4.extract_lane(highAlong, 2) * load<f32>(b, 8)
  }
  const r1 = f32x4.splat(load<f32>(r, 4) + riseR)
  const g1 = f32x4.splat(load<f32>(g, 4) + riseG)
  const b1 = f32x4.splat(load<f32>(b, 4) + riseB)
  v128.store(bounds, weigh(weightsAt, r0, r1, g0, g1, b0, b1))
  v128.store(bounds, weigh(weightsAt, r1, r0, g1, g0, b1, b0), 16)
  if (hasPeaks) {
    const composite = weightsAt + COMPOSITE
    findPeaks(weigh(composite, r0, r1, g0, g1, b0, b1), weigh(composite, r1, r0, g1, g0, b1, b0))
  }
}

/**
 * What the bounds settle. Limits of each part: the lowest rounded up, rounded down, the highest
 * rounded up, rounded down.
 */
// @ts-ignore: decorator
@inline
function settlePart(part: usize): i32 {
  const limits = limitsAt + (part << 6)
  const low = lowOf(part)
  const high = highOf(part)
  const isOutside = v128.or(
    f32x4.lt(high, v128.load(limits, 16)),
    f32x4.gt(low, v128.load(limits, 32)),
  )
  if (v128.any_true(isOutside)) return OUTSIDE
  const isInside = v128.and(
    f32x4.ge(low, v128.load(limits)),
    f32x4.le(high, v128.load(limits, 48)),
  )
  return i32x4.all_true(isInside) ? INSIDE : STRADDLING
}

/** Whether what was bounded last is inside, or outside, or not settled. */
// @ts-ignore: decorator
@inline
export function settle(): i32 {
  const settled = settlePart(0)
  if (!hasPeaks || settled == OUTSIDE) return settled
  return max(settled, settlePart(1))
}
