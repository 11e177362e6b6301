/** Four samples as 32-bit integers. */
// @ts-ignore: decorator
@inline
export function load4<T>(at: usize): v128 {
  if (sizeof<T>() == 1) {
    return i32x4.extend_low_i16x8_u(i16x8.extend_low_i8x16_u(v128.load32_zero(at)))
  }
  return v128.load_ext<u16>(at)
}

/** Eight samples, to be widened by the two functions below. */
// @ts-ignore: decorator
@inline
export function load8<T>(at: usize): v128 {
  return sizeof<T>() == 1 ? v128.load_ext<u8>(at) : v128.load(at)
}

/** The first four of eight samples as 32-bit integers. */
// @ts-ignore: decorator
@inline
export function low4(samples: v128): v128 {
  return i32x4.extend_low_i16x8_u(samples)
}

/** The last four of eight samples as 32-bit integers. */
// @ts-ignore: decorator
@inline
export function high4(samples: v128): v128 {
  return i32x4.extend_high_i16x8_u(samples)
}

/** Four integers less `zero`, as f32: exact for 18 bits. */
// @ts-ignore: decorator
@inline
export function above(samples: v128, zero: v128): v128 {
  return f32x4.convert_i32x4_s(i32x4.sub(samples, zero))
}
