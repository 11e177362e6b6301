/**
 * Adds `count` pairs of chroma codes (u16) to the counters (u32). `columns` holds for each Cb code
 * 0…1023 the bytes of its column within a row, `rows` for each Cr code the address of its row.
 */
export function countVectorscope(
  cb: usize,
  cr: usize,
  count: i32,
  columns: usize,
  rows: usize,
): void {
  const bytes = (count as usize) << 1
  for (let i: usize = 0; i < bytes; i += 2) {
    const column = load<usize>(columns + (((load<u16>(cb + i) as usize) & 1023) << 2))
    const row = load<usize>(rows + (((load<u16>(cr + i) as usize) & 1023) << 2))
    const at = row + column
    store<u32>(at, load<u32>(at) + 1)
  }
}
