import { countShortAt, countShortAt4 } from './countAt'
import { held } from './held'

/** Columns of a block: its counters stay in the nearest cache while a band is counted. */
// @ts-ignore: decorator
@inline
const BLOCK: i32 = 32
/** The bits of a 10-bit code that tell its level of 256, moved to bytes of a counter of two. */
// @ts-ignore: decorator
@inline
const LEVEL: i32 = 0x1fe

/**
 * Adds `rows` rows of `width` codes (u16) to the counters: `starts` holds for each code column the
 * address (i32) of its waveform column's 256 counters (u16, which the caller keeps from running
 * over), one to four 10-bit codes.
 */
export function countWaveform(codes: usize, width: i32, rows: i32, starts: usize): void {
  const level = held(0, i32x4.splat(LEVEL))
  const pitch = (width as usize) << 1
  for (let block = 0; block < width; block += BLOCK) {
    const end = min(block + BLOCK, width)
    for (let y = 0; y < rows; y++) {
      let x = block
      let from = codes + (y as usize) * pitch + ((x as usize) << 1)
      let start = starts + ((x as usize) << 2)
      for (; x <= end - 4; x += 4) {
        const levels = v128.and(i32x4.shr_u(v128.load_ext<u16>(from), 1), level)
        countShortAt4(i32x4.add(levels, v128.load(start)))
        from += 8
        start += 16
      }
      for (; x < end; x++) {
        countShortAt(load<usize>(start) + (((load<u16>(from) as usize) >> 1) & LEVEL))
        from += 2
        start += 4
      }
    }
  }
}

/** Moves `count` counters (u16, in eights) at `from` into those (u32) at `to`. */
export function moveCounts(from: usize, to: usize, count: i32): void {
  const end = from + ((count as usize) << 1)
  for (; from < end; from += 16) {
    const counts = v128.load(from)
    v128.store(from, i64x2.splat(0))
    v128.store(to, i32x4.add(v128.load(to), i32x4.extend_low_i16x8_u(counts)))
    v128.store(to, i32x4.add(v128.load(to, 16), i32x4.extend_high_i16x8_u(counts)), 16)
    to += 32
  }
}
