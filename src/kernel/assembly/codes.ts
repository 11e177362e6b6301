/**
 * Floats from 2^23 to 2^24 are whole numbers: a level made a code and moved to their middle is
 * rounded, and its code is what its bits are above those of the middle.
 */
// @ts-ignore: decorator
@inline
export const WHOLE: f32 = 12582912

/**
 * Eight levels as 10-bit codes kept in 0…1023: `scale` codes to 1, `offset` the code of 0 on
 * WHOLE, `whole` WHOLE in every lane, `highest` 1023 (i16). Packing keeps what is below 0 at 0.
 */
// @ts-ignore: decorator
@inline
export function codes8(
  first: v128,
  last: v128,
  scale: v128,
  offset: v128,
  whole: v128,
  highest: v128,
): v128 {
  const a = i32x4.sub(f32x4.add(f32x4.mul(first, scale), offset), whole)
  const b = i32x4.sub(f32x4.add(f32x4.mul(last, scale), offset), whole)
  return i16x8.min_u(i16x8.narrow_i32x4_u(a, b), highest)
}
