/** Counts the pair in the lowest bits of `cb` and `cr`. */
// @ts-ignore: decorator
@inline
function count(cb: u64, cr: u64, columns: usize, rows: usize): void {
  const column = load<usize>(columns + (((cb as usize) & 1023) << 2))
  const row = load<usize>(rows + (((cr as usize) & 1023) << 2))
  const at = row + column
  store<u32>(at, load<u32>(at) + 1)
}

/**
 * Adds `pairs` pairs of chroma codes (u16) to the counters (u32). `columns` holds for each Cb code
 * 0…1023 the bytes of its column within a row, `rows` for each Cr code the address of its row.
 */
export function countVectorscope(
  cb: usize,
  cr: usize,
  pairs: i32,
  columns: usize,
  rows: usize,
): void {
  const end = cb + ((pairs as usize) << 1)
  for (; cb + 8 <= end; cb += 8) {
    const fourCb = load<u64>(cb)
    const fourCr = load<u64>(cr)
    count(fourCb, fourCr, columns, rows)
    count(fourCb >> 16, fourCr >> 16, columns, rows)
    count(fourCb >> 32, fourCr >> 32, columns, rows)
    count(fourCb >> 48, fourCr >> 48, columns, rows)
    cr += 8
  }
  for (; cb < end; cb += 2) {
    count(load<u16>(cb), load<u16>(cr), columns, rows)
    cr += 2
  }
}
