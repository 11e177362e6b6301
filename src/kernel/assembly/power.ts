import { alongPieces4 } from './pieces'

/**
 * x^p by straight pieces: 256 to an octave from 2^−40 to 2^16, each an intercept and a slope
 * (f32, f32). The first piece is the identity and takes everything at or below 0 and what is
 * under 2^−40; the last takes all above 2^16. Made by `powerTable.ts`.
 */
// @ts-ignore: decorator
@inline
const PIECE_BITS: i32 = 8
// @ts-ignore: decorator
@inline
const FIRST: i32 = (127 - 40) << (PIECE_BITS + 3)
// @ts-ignore: decorator
@inline
const LAST: i32 = (((127 + 16) << PIECE_BITS) - 1) << 3

/** Constants of `power4`: bytes of a table from the piece of 2^−127, in every lane. */
// @ts-ignore: decorator
@inline
export function wholePieces4(): v128 {
  return i32x4.splat(~7)
}

// @ts-ignore: decorator
@inline
export function firstPiece4(): v128 {
  return i32x4.splat(FIRST - 8)
}

// @ts-ignore: decorator
@inline
export function lastPiece4(): v128 {
  return i32x4.splat(LAST)
}

/** The table at `table` as `power4` wants it. */
// @ts-ignore: decorator
@inline
export function table4(table: usize): v128 {
  return i32x4.splat((table as i32) + 8 - FIRST)
}

/** Four levels through a table; the other arguments are the three constants above. */
// @ts-ignore: decorator
@inline
export function power4(levels: v128, table: v128, whole: v128, first: v128, last: v128): v128 {
  const pieces = v128.and(i32x4.shr_s(levels, 23 - PIECE_BITS - 3), whole)
  const at = i32x4.add(i32x4.min_s(i32x4.max_s(pieces, first), last), table)
  return alongPieces4(levels, at)
}
