import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'

/**
 * Factors of B′ − Y′ and R′ − Y′ in U and V (SMPTE 170M, ITU-R BT.470; from memory). The assembly
 * kernel (`measureRuns`) and the preview (`shaders.ts`) have them too.
 */
export const U_FACTOR = 0.493
export const V_FACTOR = 0.877

/**
 * Lowest and highest level the analogue composite signal of a colour reaches: luma with the whole
 * swing of its chroma, Y ∓ √(U² + V²), as signal (0 black, 1 peak white). Y is BT.601's luma
 * whatever the target's luma equation is.
 */
export const compositePeaks = (
  r: number,
  g: number,
  b: number,
): readonly [low: number, high: number] => {
  const [kr, kg, kb] = LUMA_WEIGHTS.bt601
  const y = kr * r + kg * g + kb * b
  const chroma = Math.hypot(U_FACTOR * (b - y), V_FACTOR * (r - y))
  return [y - chroma, y + chroma]
}
