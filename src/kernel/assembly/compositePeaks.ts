/** The composite signal of four delivered colours: see core/tolerance/compositePeaks.ts. */

// @ts-ignore: decorator
@inline
export function compositeLuma4(r: v128, g: v128, b: v128): v128 {
  const red = f32x4.mul(r, f32x4.splat(0.299))
  const green = f32x4.mul(g, f32x4.splat(0.587))
  return f32x4.add(f32x4.add(red, green), f32x4.mul(b, f32x4.splat(0.114)))
}

/** The swing of the chroma on that luma, √(U² + V²). */
// @ts-ignore: decorator
@inline
export function chroma4(r: v128, b: v128, luma: v128): v128 {
  const u = f32x4.mul(f32x4.sub(b, luma), f32x4.splat(0.493))
  const v = f32x4.mul(f32x4.sub(r, luma), f32x4.splat(0.877))
  return f32x4.sqrt(f32x4.add(f32x4.mul(u, u), f32x4.mul(v, v)))
}
