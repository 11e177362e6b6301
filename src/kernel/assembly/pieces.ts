/** Four levels along straight pieces: the addresses of each piece's intercept and slope (f32). */
// @ts-ignore: decorator
@inline
export function alongPieces4(levels: v128, at: v128): v128 {
  const at01 = i64x2.extract_lane(at, 0)
  const at23 = i64x2.extract_lane(at, 1)
  const low = v128.load64_lane((at01 >>> 32) as usize, v128.load64_zero(at01 as usize), 1)
  const high = v128.load64_lane((at23 >>> 32) as usize, v128.load64_zero(at23 as usize), 1)
  const intercepts = v128.shuffle<f32>(low, high, 0, 2, 4, 6)
  const slopes = v128.shuffle<f32>(low, high, 1, 3, 5, 7)
  return f32x4.add(intercepts, f32x4.mul(slopes, levels))
}
