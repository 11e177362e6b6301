import { WHOLE } from './codes'

/** Four levels times `scale` plus `offset`, kept in 0…`largest`, as whole numbers; no number is 0. */
// @ts-ignore: decorator
@inline
export function exact4(level: v128, scale: v128, offset: v128): v128 {
  return f32x4.add(f32x4.mul(level, scale), offset)
}

// @ts-ignore: decorator
@inline
export function codes4(exact: v128, largest: v128): v128 {
  const whole = f32x4.splat(WHOLE)
  const kept = f32x4.pmin(largest, f32x4.pmax(f32x4.splat(0), exact))
  return i32x4.sub(f32x4.add(kept, whole), whole)
}

/** Where an exact code is more than half a code past 0…`largest`. */
// @ts-ignore: decorator
@inline
export function past4(exact: v128, largest: v128): v128 {
  const half = f32x4.splat(0.5)
  return v128.or(f32x4.lt(exact, f32x4.neg(half)), f32x4.ge(exact, f32x4.add(largest, half)))
}

/** Eight whole numbers at `to` as codes of a byte or of two, little-endian. */
// @ts-ignore: decorator
@inline
export function storeCodes8<T>(to: usize, first: v128, last: v128): void {
  const codes = i16x8.narrow_i32x4_u(first, last)
  if (sizeof<T>() == 1) v128.store64_lane(to, i8x16.narrow_i16x8_u(codes, codes), 0)
  else v128.store(to, codes)
}
