import { countAt, countAt4 } from './countAt'
import { held } from './held'

/** The bits of a 10-bit code that tell its level of 256, in bytes of a counter. */
// @ts-ignore: decorator
@inline
const LEVEL: i32 = 0x3fc

/** Bytes of the counters of one level of the first plane. */
// @ts-ignore: decorator
@inline
const ROW: usize = 1024

/**
 * Adds `count` pairs of codes (u16) to 256×256 counters (u32), a row for each level of the first:
 * two planes are counted at the cost of one, and what each has of a level is a sum.
 */
export function countLevelPairs(first: usize, second: usize, count: i32, counters: usize): void {
  const level = held(0, i32x4.splat(LEVEL))
  const start = held(1, i32x4.splat(counters as i32))
  const end = first + ((count as usize) << 1)
  for (; first + 8 <= end; first += 8) {
    const row = i32x4.shl(v128.and(v128.load_ext<u16>(first), level), 8)
    const column = v128.and(v128.load_ext<u16>(second), level)
    countAt4(i32x4.add(v128.or(row, column), start))
    second += 8
  }
  for (; first < end; first += 2) {
    const row = ((load<u16>(first) as usize) & LEVEL) << 8
    countAt(counters + row + ((load<u16>(second) as usize) & LEVEL))
    second += 2
  }
}

/** The sums of such counters to 256 (u32) of the first plane and 256 of the second. */
export function sumLevelPairs(counters: usize, toFirst: usize, toSecond: usize): void {
  memory.fill(toSecond, 0, ROW)
  for (let row: usize = 0; row < 256; row++) {
    let sum = i32x4.splat(0)
    const from = counters + row * ROW
    for (let i: usize = 0; i < ROW; i += 16) {
      const counts = v128.load(from + i)
      sum = i32x4.add(sum, counts)
      v128.store(toSecond + i, i32x4.add(v128.load(toSecond + i), counts))
    }
    const pairs = i32x4.add(sum, v128.shuffle<i32>(sum, sum, 2, 3, 0, 1))
    const all = i32x4.extract_lane(pairs, 0) + i32x4.extract_lane(pairs, 1)
    store<i32>(toFirst + (row << 2), all)
  }
}
