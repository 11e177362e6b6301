import { countAt, countAt4 } from './countAt'
import { held } from './held'

/** Columns of a block: its counters stay in the nearest cache while a band is counted. */
// @ts-ignore: decorator
@inline
const BLOCK: i32 = 64
/** The bits of a code that tell its counter, in bytes: four codes to a counter of four bytes. */
// @ts-ignore: decorator
@inline
const LEVEL: i32 = 0x3fc

/**
 * Adds `rows` rows of `width` luma codes (u16) to the counters: `starts` holds for each code
 * column the address (i32) of its waveform column's 256 counters (u32), one to four 10-bit codes.
 */
export function countWaveform(luma: usize, width: i32, rows: i32, starts: usize): void {
  const level = held(0, i32x4.splat(LEVEL))
  const pitch = (width as usize) << 1
  for (let block = 0; block < width; block += BLOCK) {
    const end = min(block + BLOCK, width)
    for (let y = 0; y < rows; y++) {
      let x = block
      let codes = luma + (y as usize) * pitch + ((x as usize) << 1)
      let start = starts + ((x as usize) << 2)
      for (; x <= end - 4; x += 4) {
        countAt4(i32x4.add(v128.and(v128.load_ext<u16>(codes), level), v128.load(start)))
        codes += 8
        start += 16
      }
      for (; x < end; x++) {
        countAt(load<usize>(start) + ((load<u16>(codes) as usize) & LEVEL))
        codes += 2
        start += 4
      }
    }
  }
}
