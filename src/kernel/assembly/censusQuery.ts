import {
  censusBoxes,
  censusCounts,
  censusKeys,
  censusLevels,
  curvesAt,
  figureCount,
  isBoxed,
  limitsAt,
  openKeys,
  openLimit,
  weightsAt,
} from './censusQuerySettings'

/** Pieces of a curve: the same as in `core/census/gradeCurves.ts`. */
// @ts-ignore: decorator
@inline
const PIECES: i32 = 256
/** Colours under a lowest box, boxes under a higher one: as in `core/census/censusData.ts`. */
// @ts-ignore: decorator
@inline
const LEAF: i32 = 32
// @ts-ignore: decorator
@inline
const BRANCH: i32 = 8

// @ts-ignore: decorator
@inline
const INSIDE: i32 = 0
// @ts-ignore: decorator
@inline
const STRADDLING: i32 = 1
// @ts-ignore: decorator
@inline
const OUTSIDE: i32 = 2

/** Of curves: three starts, three pieces to 1, then each channel's levels, bends, slacks (f64). */
// @ts-ignore: decorator
@inline
const SCALES: usize = 24
// @ts-ignore: decorator
@inline
const CURVE: usize = 48
// @ts-ignore: decorator
@inline
const CURVE_BYTES: usize = 257 * 8
// @ts-ignore: decorator
@inline
const BENDS: usize = 48 + 3 * 257 * 8
// @ts-ignore: decorator
@inline
const SLACKS: usize = 48 + 3 * (257 + 256) * 8
// @ts-ignore: decorator
@inline
const PIECE_BYTES: usize = 256 * 8

/** Least and most of seven figures (f64). */
const least = memory.data(7 * 8, 8)
const most = memory.data(7 * 8, 8)

let low: f64 = 0
let high: f64 = 0
let atLeast: f64 = 0
let atMost: f64 = 0
let open: i32 = 0

/** Pixels surely outside, and those not surely inside; what is on the open list is in neither. */
export function pixelsOutside(): f64 {
  return atLeast
}

export function pixelsNotInside(): f64 {
  return atMost
}

/** Bounds a level graded, in `low` and `high`. */
// @ts-ignore: decorator
@inline
function gradeLevel(level: f32, c: usize): void {
  const place =
    ((level as f64) - load<f64>(curvesAt + (c << 3))) * load<f64>(curvesAt + (c << 3), SCALES)
  const piece = max(0, min(PIECES - 1, place as i32))
  const at = curvesAt + c * CURVE_BYTES + ((piece as usize) << 3)
  const start = load<f64>(at, CURVE)
  const end = load<f64>(at, CURVE + 8)
  const chord = start + (place - (piece as f64)) * (end - start)
  const off = curvesAt + c * PIECE_BYTES + ((piece as usize) << 3)
  const bend = load<f64>(off, BENDS)
  const slack = load<f64>(off, SLACKS)
  low = max(start, chord - bend) - slack
  high = min(end, chord + bend) + slack
}

/** Luma, U and V at 4, 5, 6 become the lowest peak at 4 and the highest at 5. */
function findPeaks(): void {
  const y0 = load<f64>(least, 32)
  const y1 = load<f64>(most, 32)
  const u0 = load<f64>(least, 40)
  const u1 = load<f64>(most, 40)
  const v0 = load<f64>(least, 48)
  const v1 = load<f64>(most, 48)
  const nearU = max(0, max(u0, -u1))
  const nearV = max(0, max(v0, -v1))
  const farU = max(-u0, u1)
  const farV = max(-v0, v1)
  const weakest = Math.sqrt(nearU * nearU + nearV * nearV)
  const strongest = Math.sqrt(farU * farU + farV * farV)
  store<f64>(least, y0 - strongest, 32)
  store<f64>(most, y1 - weakest, 32)
  store<f64>(least, y0 + weakest, 40)
  store<f64>(most, y1 + strongest, 40)
}

/** Whether a box (low R′, G′, B′, high R′, G′, B′) or a colour is inside, outside, or not settled. */
function settle(at: usize, isBox: bool): i32 {
  gradeLevel(load<f32>(at), 0)
  const r0 = low
  let r1 = high
  gradeLevel(load<f32>(at, 4), 1)
  const g0 = low
  let g1 = high
  gradeLevel(load<f32>(at, 8), 2)
  const b0 = low
  let b1 = high
  if (isBox) {
    gradeLevel(load<f32>(at, 12), 0)
    r1 = high
    gradeLevel(load<f32>(at, 16), 1)
    g1 = high
    gradeLevel(load<f32>(at, 20), 2)
    b1 = high
  }
  const figures = figureCount
  for (let f = 0; f < figures; f++) {
    const weights = weightsAt + (f as usize) * 24
    const wr = load<f64>(weights)
    const wg = load<f64>(weights, 8)
    const wb = load<f64>(weights, 16)
    const lowR = wr < 0 ? r1 : r0
    const highR = wr < 0 ? r0 : r1
    const lowG = wg < 0 ? g1 : g0
    const highG = wg < 0 ? g0 : g1
    const lowB = wb < 0 ? b1 : b0
    const highB = wb < 0 ? b0 : b1
    store<f64>(least + ((f as usize) << 3), wr * lowR + wg * lowG + wb * lowB)
    store<f64>(most + ((f as usize) << 3), wr * highR + wg * highG + wb * highB)
  }
  let held = figures
  if (figures > 4) {
    findPeaks()
    held = 6
  }
  let result = INSIDE
  for (let f = 0; f < held; f++) {
    const lowF = load<f64>(least + ((f as usize) << 3))
    const highF = load<f64>(most + ((f as usize) << 3))
    const lowest = load<f64>(limitsAt + ((f as usize) << 4))
    const highest = load<f64>(limitsAt + ((f as usize) << 4), 8)
    if (highF < lowest || lowF > highest) return OUTSIDE
    if (lowF < lowest || highF > highest) result = STRADDLING
  }
  return result
}

function countColours(first: i32, end: i32): void {
  const perKey: usize = isBoxed ? 24 : 12
  for (let i = first; i < end; i++) {
    const settled = settle(censusLevels + (i as usize) * perKey, isBoxed != 0)
    if (settled == INSIDE) continue
    const pixels = load<u32>(censusCounts + ((i as usize) << 2)) as f64
    if (settled == STRADDLING && !isBoxed) {
      if (open < openLimit) store<i32>(openKeys + ((open as usize) << 2), i)
      open++
      continue
    }
    atMost += pixels
    if (settled == OUTSIDE) atLeast += pixels
  }
}

/** Of a level: addresses of its boxes and of their pixels, and how many there are (u32 each). */
function countBoxes(level: i32, first: i32, end: i32): void {
  const entry = censusBoxes + (level as usize) * 12
  const boxes = load<u32>(entry) as usize
  const pixels = load<u32>(entry, 4) as usize
  for (let i = first; i < end; i++) {
    const settled = settle(boxes + (i as usize) * 24, true)
    if (settled == INSIDE) continue
    if (settled == OUTSIDE) {
      const out = load<f64>(pixels + ((i as usize) << 3))
      atLeast += out
      atMost += out
    } else if (level == 0) {
      countColours(i * LEAF, min((i + 1) * LEAF, censusKeys))
    } else {
      countBoxes(level - 1, i * BRANCH, min((i + 1) * BRANCH, load<i32>(entry - 12, 8)))
    }
  }
}

/**
 * Counts the pixels outside under the curves, weights and limits set. Returns how many single
 * colours are too near a limit to be settled: their places are written, up to `openLimit`.
 */
export function countOutside(top: i32): i32 {
  atLeast = 0
  atMost = 0
  open = 0
  countBoxes(top, 0, load<i32>(censusBoxes + (top as usize) * 12, 8))
  return open
}
