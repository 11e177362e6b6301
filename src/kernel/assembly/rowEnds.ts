/** Repeats the first and the last of `count` f32 at `row` `times` times before and after them. */
export function repeatEnds(row: usize, count: i32, times: i32): void {
  const first = load<f32>(row)
  const end = row + ((count as usize) << 2)
  const last = load<f32>(end - 4)
  for (let i = 0; i < times; i++) {
    store<f32>(row - (((i + 1) as usize) << 2), first)
    store<f32>(end + ((i as usize) << 2), last)
  }
}

/**
 * Puts "not a number" after `count` f32 at `row`, to the end of a group of eight: it is neither
 * lower nor higher than anything, and never outside.
 */
export function noNumbersAfter(row: usize, count: i32): void {
  const end = row + ((count as usize) << 2)
  for (let i: usize = 0; i < 28; i += 4) store<f32>(end + i, NaN)
}
