import { Filtered, is } from './variants'

/**
 * Four levels to be measured: as they lie, or summed with those of the rows above and below by
 * the vertical taps 1 2 1 of EBU R 103 v3, not divided by their sum.
 */
// @ts-ignore: decorator
@inline
export function levels4<F>(upper: usize, middle: usize, lower: usize): v128 {
  const here = v128.load(middle)
  if (!is<F, Filtered>()) return here
  return f32x4.add(f32x4.add(v128.load(upper), v128.load(lower)), f32x4.add(here, here))
}

/** The four levels after those. */
// @ts-ignore: decorator
@inline
export function nextLevels4<F>(upper: usize, middle: usize, lower: usize): v128 {
  const here = v128.load(middle, 16)
  if (!is<F, Filtered>()) return here
  return f32x4.add(f32x4.add(v128.load(upper, 16), v128.load(lower, 16)), f32x4.add(here, here))
}

// @ts-ignore: decorator
@inline
export function weighted4(r: v128, g: v128, b: v128, kr: v128, kg: v128, kb: v128): v128 {
  return f32x4.add(f32x4.add(f32x4.mul(r, kr), f32x4.mul(g, kg)), f32x4.mul(b, kb))
}
