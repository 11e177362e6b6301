import { censusBoxes, censusKeys, censusLevels, isBoxed } from './censusQuerySettings'

/** Colours under a lowest box, boxes under a higher one: as in `core/census/censusData.ts`. */
// @ts-ignore: decorator
@inline
const LEAF: i32 = 16
// @ts-ignore: decorator
@inline
const BRANCH: i32 = 8

/** Of a level: addresses of its boxes and of their pixels, and how many there are (u32 each). */
// @ts-ignore: decorator
@inline
function levelAt(level: i32): usize {
  return censusBoxes + (level as usize) * 12
}

/** Boxes of a level. */
// @ts-ignore: decorator
@inline
export function boxCount(level: i32): i32 {
  return load<i32>(levelAt(level), 8)
}

/** The address of a box. */
// @ts-ignore: decorator
@inline
export function boxAt(level: i32, i: i32): usize {
  return (load<u32>(levelAt(level)) as usize) + (i as usize) * 24
}

/** Pixels of a box. */
// @ts-ignore: decorator
@inline
export function boxPixels(level: i32, i: i32): f64 {
  return load<f64>((load<u32>(levelAt(level), 4) as usize) + ((i as usize) << 3))
}

/** The address of a key's levels. */
// @ts-ignore: decorator
@inline
export function keyAt(i: i32): usize {
  return censusLevels + (i as usize) * (isBoxed ? 24 : 12)
}

/** The first of what lies under a box, keys under one of level 0; and the end. */
// @ts-ignore: decorator
@inline
export function firstUnder(level: i32, i: i32): i32 {
  return level == 0 ? i * LEAF : i * BRANCH
}
// @ts-ignore: decorator
@inline
export function endUnder(level: i32, i: i32): i32 {
  return level == 0
    ? min((i + 1) * LEAF, censusKeys)
    : min((i + 1) * BRANCH, boxCount(level - 1))
}
