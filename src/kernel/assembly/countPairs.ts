import { countAt, countAt4 } from './countAt'
import { held } from './held'

/** The bits of a 10-bit code that tell its level of 256, in bytes of a counter. */
// @ts-ignore: decorator
@inline
const LEVEL: i32 = 0x3fc

/** Adds pairs of codes (u16) to 256×256 counters (u32): a row for each level of the first. */
export function countPairs(first: usize, second: usize, pairs: i32, counters: usize): void {
  const level = held(0, i32x4.splat(LEVEL))
  const start = held(1, i32x4.splat(counters as i32))
  const end = first + ((pairs as usize) << 1)
  for (; first + 8 <= end; first += 8) {
    const row = i32x4.shl(v128.and(v128.load_ext<u16>(first), level), 8)
    const column = v128.and(v128.load_ext<u16>(second), level)
    countAt4(i32x4.add(i32x4.add(row, column), start))
    second += 8
  }
  for (; first < end; first += 2) {
    const row = ((load<u16>(first) as usize) & LEVEL) << 8
    countAt(counters + row + ((load<u16>(second) as usize) & LEVEL))
    second += 2
  }
}
