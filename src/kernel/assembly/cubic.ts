// @ts-ignore: decorator
@inline
function splat(value: f32): v128 {
  return f32x4.splat(value)
}

/** Keys' cubic (a = -1/2; see core/picture/keysCubic.ts) at four distances. */
// @ts-ignore: decorator
@inline
function cubic4(distances: v128): v128 {
  const d = f32x4.min(f32x4.abs(distances), splat(2))
  const inner = f32x4.add(
    f32x4.mul(f32x4.mul(f32x4.sub(f32x4.mul(d, splat(1.5)), splat(2.5)), d), d),
    splat(1),
  )
  const slope = f32x4.sub(f32x4.mul(f32x4.sub(splat(2.5), f32x4.mul(d, splat(0.5))), d), splat(4))
  const outer = f32x4.add(f32x4.mul(slope, d), splat(2))
  return v128.bitselect(inner, outer, f32x4.lt(d, splat(1)))
}

/**
 * The weights of `taps` samples (a multiple of 4), `step` apart from the distance `first` on, to
 * `to`; their sum is returned, and not divided out.
 */
export function cubicWeights(to: usize, taps: i32, first: f32, step: f32): f32 {
  let at = f32x4.add(splat(first), f32x4.mul(f32x4(0, 1, 2, 3), splat(step)))
  let sum = splat(0)
  for (let k = 0; k < taps; k += 4) {
    const weights = cubic4(at)
    v128.store(to + ((k as usize) << 2), weights)
    sum = f32x4.add(sum, weights)
    at = f32x4.add(at, splat(4 * step))
  }
  return (
    f32x4.extract_lane(sum, 0) +
    f32x4.extract_lane(sum, 1) +
    f32x4.extract_lane(sum, 2) +
    f32x4.extract_lane(sum, 3)
  )
}
