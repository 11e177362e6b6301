import { bound, INSIDE, OUTSIDE, STRADDLING, settle } from './censusBounds'
import { censusCounts, isBoxed, openKeys, openLimit } from './censusQuerySettings'
import { boxAt, boxCount, boxPixels, endUnder, firstUnder, keyAt } from './censusTree'

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

function countKeys(first: i32, end: i32): void {
  for (let i = first; i < end; i++) {
    if (isBoxed) bound(keyAt(i), true)
    else bound(keyAt(i), false)
    const settled = settle()
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

function countBoxes(level: i32, first: i32, end: i32): void {
  for (let i = first; i < end; i++) {
    bound(boxAt(level, i), true)
    const settled = settle()
    if (settled == INSIDE) continue
    if (settled == OUTSIDE) {
      const out = boxPixels(level, i)
      atLeast += out
      atMost += out
    } else if (level == 0) countKeys(firstUnder(0, i), endUnder(0, i))
    else countBoxes(level - 1, firstUnder(level, i), endUnder(level, i))
  }
}

/**
 * Counts the pixels outside under the curves, weights and limits set, `top` the level of the one
 * box. Returns how many single colours are too near a limit to be settled: their places are
 * written, up to `openLimit`.
 */
export function countOutside(top: i32): i32 {
  atLeast = 0
  atMost = 0
  open = 0
  countBoxes(top, 0, boxCount(top))
  return open
}
