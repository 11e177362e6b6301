/** The least divisor, where both sides of a quotient may be 0. */
const LEAST: f32 = 1e-30

// @ts-ignore: decorator
@inline
export function quotient4(a: v128, b: v128): v128 {
  return f32x4.div(a, f32x4.max(b, f32x4.splat(LEAST)))
}

/** What is left of `past`, four distances past a knee: `knee`·past / (|past| + knee). */
// @ts-ignore: decorator
@inline
export function bent4(past: v128, knee: v128): v128 {
  return quotient4(f32x4.mul(knee, past), f32x4.add(f32x4.abs(past), knee))
}

/** Levels kept from `from` to `to`; what is no number stays so. */
// @ts-ignore: decorator
@inline
export function within4(level: v128, from: v128, to: v128): v128 {
  return f32x4.pmin(f32x4.pmax(level, from), to)
}

/** `part` of the way from a grey to a level. */
// @ts-ignore: decorator
@inline
export function fromGrey4(level: v128, grey: v128, part: v128): v128 {
  return f32x4.add(grey, f32x4.mul(part, f32x4.sub(level, grey)))
}
