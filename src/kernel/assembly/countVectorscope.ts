import { countAt4, countAt } from './countAt'
import { held } from './held'

/** Codes are counted modulo this: none leads outside the counters. */
// @ts-ignore: decorator
@inline
const CODE: i32 = 1023
// @ts-ignore: decorator
@inline
const CODE_BITS: i32 = 10

/**
 * Adds `pairs` pairs of chroma codes (u16) to size×size counters (u32): Cb from left to right,
 * Cr from the last row to the first.
 */
export function countVectorscope(
  cb: usize,
  cr: usize,
  pairs: i32,
  size: i32,
  counters: usize,
): void {
  const lastRow = (counters as i32) + (((size - 1) * size) << 2)
  const code = held(0, i32x4.splat(CODE))
  const sizes = held(1, i32x4.splat(size))
  const rowBytes = held(2, i32x4.splat(size << 2))
  const lastRows = held(3, i32x4.splat(lastRow))
  const end = cb + ((pairs as usize) << 1)
  for (; cb + 8 <= end; cb += 8) {
    const cb4 = v128.and(v128.load_ext<u16>(cb), code)
    const cr4 = v128.and(v128.load_ext<u16>(cr), code)
    const column = i32x4.shl(i32x4.shr_u(i32x4.mul(cb4, sizes), CODE_BITS), 2)
    const row = i32x4.mul(i32x4.shr_u(i32x4.mul(cr4, sizes), CODE_BITS), rowBytes)
    countAt4(i32x4.add(i32x4.sub(lastRows, row), column))
    cr += 8
  }
  for (; cb < end; cb += 2) {
    const column = ((load<u16>(cb) as i32 & CODE) * size) >> CODE_BITS
    const row = ((load<u16>(cr) as i32 & CODE) * size) >> CODE_BITS
    countAt((lastRow - ((row * size - column) << 2)) as usize)
    cr += 2
  }
}
