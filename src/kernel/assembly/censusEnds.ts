import { bound, farthest, highOf, lowOf } from './censusBounds'
import { endsAt, hasPeaks, isBoxed, openKeys, openLimit } from './censusQuerySettings'
import { boxAt, boxCount, endUnder, firstUnder, keyAt } from './censusTree'

let open: i32 = 0

/** Of a part (R′, G′, B′, Y′, or peaks): what its lowest and its highest is surely not past. */
// @ts-ignore: decorator
@inline
function leastOf(part: usize): v128 {
  return v128.load(endsAt + (part << 5))
}
// @ts-ignore: decorator
@inline
function mostOf(part: usize): v128 {
  return v128.load(endsAt + (part << 5), 16)
}

/** Lanes where what was bounded last may be lower than the lowest, or higher than the highest. */
// @ts-ignore: decorator
@inline
function mayBeEnd(part: usize): v128 {
  // Boxes give their own ends; of single colours one that may be as far is looked at exactly.
  return isBoxed
    ? v128.or(f32x4.lt(lowOf(part), leastOf(part)), f32x4.gt(highOf(part), mostOf(part)))
    : v128.or(f32x4.le(lowOf(part), leastOf(part)), f32x4.ge(highOf(part), mostOf(part)))
}

// @ts-ignore: decorator
@inline
function isPromising(): bool {
  return (
    v128.any_true(mayBeEnd(0)) || (hasPeaks != 0 && v128.any_true(mayBeEnd(1)))
  )
}

/** Takes what was bounded last, a key, into the ends. */
// @ts-ignore: decorator
@inline
function holdPart(part: usize): void {
  const low = isBoxed ? lowOf(part) : highOf(part)
  const high = isBoxed ? highOf(part) : lowOf(part)
  v128.store(endsAt + (part << 5), f32x4.min(low, leastOf(part)))
  v128.store(endsAt + (part << 5), f32x4.max(high, mostOf(part)), 16)
}

// @ts-ignore: decorator
@inline
function hold(): void {
  holdPart(0)
  if (hasPeaks) holdPart(1)
}

// @ts-ignore: decorator
@inline
function boundKey(i: i32): void {
  if (isBoxed) bound(keyAt(i), true)
  else bound(keyAt(i), false)
}

function searchKeys(first: i32, end: i32): void {
  for (let i = first; i < end; i++) {
    boundKey(i)
    if (!isPromising()) continue
    hold()
    if (isBoxed) continue
    if (open < openLimit) store<i32>(openKeys + ((open as usize) << 2), i)
    open++
  }
}

function searchBoxes(level: i32, first: i32, end: i32): void {
  for (let i = first; i < end; i++) {
    bound(boxAt(level, i), true)
    if (!isPromising()) continue
    if (level == 0) searchKeys(firstUnder(0, i), endUnder(0, i))
    else searchBoxes(level - 1, firstUnder(level, i), endUnder(level, i))
  }
}

/**
 * Takes into the ends the key that is reached from the top by the farthest box each time: it is
 * seldom far from the end of that figure, and much need not be searched any more.
 */
function reach(top: i32, part: usize, lane: i32, isHigh: bool): void {
  let level = top
  let first = 0
  let end = boxCount(top)
  while (true) {
    let best = first
    let far = -Infinity as f32
    for (let i = first; i < end; i++) {
      if (level < 0) boundKey(i)
      else bound(boxAt(level, i), true)
      const reached = farthest(part, lane, isHigh)
      if (reached > far) {
        far = reached
        best = i
      }
    }
    if (level < 0) {
      boundKey(best)
      hold()
      return
    }
    first = firstUnder(level, best)
    end = endUnder(level, best)
    level--
  }
}

/**
 * Finds the ends of all figures under the curves and weights set, `top` the level of the one box.
 * Where keys are boxes the ends are written to `endsAt`, and 0 is returned. Where they are single
 * colours, returns how many may be at an end: their places are written, up to `openLimit`.
 */
export function findEnds(top: i32): i32 {
  open = 0
  v128.store(endsAt, f32x4.splat(Infinity))
  v128.store(endsAt, f32x4.splat(-Infinity), 16)
  // Asked for are the low end of the lowest peak and the high end of the highest alone.
  v128.store(endsAt, f32x4(Infinity, -Infinity, -Infinity, -Infinity), 32)
  v128.store(endsAt, f32x4(Infinity, -Infinity, Infinity, Infinity), 48)
  for (let lane = 0; lane < 4; lane++) {
    reach(top, 0, lane, false)
    reach(top, 0, lane, true)
  }
  if (hasPeaks) {
    reach(top, 1, 0, false)
    reach(top, 1, 1, true)
  }
  searchBoxes(top, 0, boxCount(top))
  if (open > openLimit) return open
  // Now that the ends are known, few of the places are still in question.
  let left = 0
  for (let k = 0; k < open; k++) {
    const i = load<i32>(openKeys + ((k as usize) << 2))
    boundKey(i)
    if (!isPromising()) continue
    store<i32>(openKeys + ((left as usize) << 2), i)
    left++
  }
  return left
}
