/** Columns of a block: its counters stay in the nearest cache while a band is counted. */
// @ts-ignore: decorator
@inline
const BLOCK: i32 = 64

/** Counts the code in the lowest bits of `codes` at the counters that `start` is the address of. */
// @ts-ignore: decorator
@inline
function count(codes: u64, start: usize): void {
  const at = load<usize>(start) + ((codes as usize) & 0x3fc)
  store<u32>(at, load<u32>(at) + 1)
}

/**
 * Adds `rows` rows of `width` luma codes (u16) to the counters: `starts` holds for each code
 * column the address (i32) of its waveform column's 256 counters (u32), one to four 10-bit codes.
 */
export function countWaveform(luma: usize, width: i32, rows: i32, starts: usize): void {
  const pitch = (width as usize) << 1
  for (let block = 0; block < width; block += BLOCK) {
    const end = min(block + BLOCK, width)
    for (let y = 0; y < rows; y++) {
      let x = block
      let codes = luma + (y as usize) * pitch + ((x as usize) << 1)
      let start = starts + ((x as usize) << 2)
      for (; x <= end - 4; x += 4) {
        const four = load<u64>(codes)
        count(four, start)
        count(four >> 16, start + 4)
        count(four >> 32, start + 8)
        count(four >> 48, start + 12)
        codes += 8
        start += 16
      }
      for (; x < end; x++) {
        count(load<u16>(codes), start)
        codes += 2
        start += 4
      }
    }
  }
}
