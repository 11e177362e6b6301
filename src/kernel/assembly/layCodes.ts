/** Four levels as exact codes: `scale` codes to 1, `offset` the code of 0. */
// @ts-ignore: decorator
@inline
export function exact4(level: v128, scale: v128, offset: v128): v128 {
  return f32x4.add(f32x4.mul(level, scale), offset)
}

/** Exact codes kept in 0…`largest`; what is no number is 0. */
// @ts-ignore: decorator
@inline
export function kept4(exact: v128, zero: v128, largest: v128): v128 {
  return f32x4.pmin(largest, f32x4.pmax(zero, exact))
}

/** Kept codes rounded: see `WHOLE`, which is `whole` in every lane. */
// @ts-ignore: decorator
@inline
export function codes4(kept: v128, whole: v128): v128 {
  return i32x4.sub(f32x4.add(kept, whole), whole)
}

/** How far exact codes lay past where they are kept; half a code or more is clipped. */
// @ts-ignore: decorator
@inline
export function past4(exact: v128, kept: v128): v128 {
  return f32x4.abs(f32x4.sub(exact, kept))
}

/** Eight codes at `to`, of a byte or of two, little-endian. */
// @ts-ignore: decorator
@inline
export function storeCodes8<T>(to: usize, first: v128, last: v128): void {
  const codes = i16x8.narrow_i32x4_u(first, last)
  if (sizeof<T>() == 1) v128.store64_lane(to, i8x16.narrow_i16x8_u(codes, codes), 0)
  else v128.store(to, codes)
}
