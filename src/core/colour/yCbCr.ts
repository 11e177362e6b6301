import type { MatrixName } from '../picture/planes.ts'
import { LUMA_WEIGHTS } from './lumaWeights.ts'
import type { Triple } from './triple.ts'

/**
 * Non-linear R′G′B′ (0 black, 1 peak, unbounded) → Y′ (same scale), Cb, Cr (±0.5 for colours in
 * 0…1). BT.601-7 §2.5.1, BT.709-6 §3.2–3.3, BT.2020-2 table 4.
 */
export const rgbToYCbCr = ([r, g, b]: Triple, matrix: MatrixName): Triple => {
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const y = kr * r + kg * g + kb * b
  return [y, (b - y) / (2 * (1 - kb)), (r - y) / (2 * (1 - kr))]
}

/** The inverse of `rgbToYCbCr`, unclipped. */
export const yCbCrToRgb = ([y, cb, cr]: Triple, matrix: MatrixName): Triple => {
  const { crToR, cbToB, cbToG, crToG } = yCbCrToRgbFactors(matrix)
  return [y + crToR * cr, y + cbToG * cb + crToG * cr, y + cbToB * cb]
}

/** The four factors of the inverse matrix: R′ = Y′ + crToR·Cr, and so on. */
export const yCbCrToRgbFactors = (matrix: MatrixName) => {
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const crToR = 2 * (1 - kr)
  const cbToB = 2 * (1 - kb)
  return { crToR, cbToB, cbToG: (-kb * cbToB) / kg, crToG: (-kr * crToR) / kg }
}
