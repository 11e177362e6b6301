/** Columns of a block: its counters stay in the nearest cache while a band is counted. */
const BLOCK: i32 = 64

/**
 * Adds `rows` rows of `width` luma codes (u16) to the counters: `starts` holds for each code
 * column the address (i32) of its waveform column's 256 counters (u32), one to four 10-bit codes.
 */
export function countWaveform(luma: usize, width: i32, rows: i32, starts: usize): void {
  const pitch = (width as usize) << 1
  for (let block = 0; block < width; block += BLOCK) {
    const end = min(block + BLOCK, width)
    for (let y = 0; y < rows; y++) {
      const row = luma + (y as usize) * pitch
      for (let x = block; x < end; x++) {
        const code = load<u16>(row + ((x as usize) << 1)) as usize
        const at = load<usize>(starts + ((x as usize) << 2)) + (code & 0x3fc)
        store<u32>(at, load<u32>(at) + 1)
      }
    }
  }
}
