/** Floats of this size hold whole numbers only: adding it rounds, and leaves the integer below. */
// @ts-ignore: decorator
@inline
export const WHOLE_FLOAT: f32 = 8388608

/** Four codes below 2^22 as integers; below 0 and not-a-number give 0. */
// @ts-ignore: decorator
@inline
export function whole4(codes: v128, none: v128, whole: v128): v128 {
  return i32x4.sub(f32x4.add(f32x4.pmax(none, codes), whole), whole)
}
