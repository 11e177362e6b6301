import { alongPieces4 } from './pieces'

/**
 * A curve by straight pieces of equal width: f32 start of the first piece, pieces to 1, number of
 * the last piece, unused; then for each piece an intercept and a slope (f32, f32). Levels past the
 * ends follow the first and the last piece. Made by `baseCurves.ts`.
 */
// @ts-ignore: decorator
@inline
const HEAD: i32 = 16

/** Four levels through the curve at `curve`. */
// @ts-ignore: decorator
@inline
export function curve4(levels: v128, curve: usize): v128 {
  const from = v128.load32_splat(curve)
  const scale = v128.load32_splat(curve, 4)
  const last = v128.load32_splat(curve, 8)
  const place = f32x4.mul(f32x4.sub(levels, from), scale)
  const piece = i32x4.trunc_sat_f32x4_s(f32x4.pmin(last, f32x4.pmax(f32x4.splat(0), place)))
  const at = i32x4.add(i32x4.shl(piece, 3), i32x4.splat((curve as i32) + HEAD))
  return alongPieces4(levels, at)
}
