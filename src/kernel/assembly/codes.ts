/**
 * Floats from 2^23 to 2^24 are whole numbers: a level made a code and moved to their middle is
 * rounded, and its code is what its bits are above those of the middle.
 */
// @ts-ignore: decorator
@inline
export const WHOLE: f32 = 12582912

/**
 * Eight levels as 10-bit codes kept in 0…1023: `scale` codes to 1, `offset` the code of 0 on
 * WHOLE, `whole` WHOLE in every lane, `none` and `highest` 0 and 1023 (i16).
 */
// @ts-ignore: decorator
@inline
export function codes8(
  first: v128,
  last: v128,
  scale: v128,
  offset: v128,
  whole: v128,
  none: v128,
  highest: v128,
): v128 {
  const a = i32x4.sub(f32x4.add(f32x4.mul(first, scale), offset), whole)
  const b = i32x4.sub(f32x4.add(f32x4.mul(last, scale), offset), whole)
  return i16x8.min_s(i16x8.max_s(i16x8.narrow_i32x4_s(a, b), none), highest)
}
