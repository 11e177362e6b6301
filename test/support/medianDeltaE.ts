import { displayedRgbToLab } from '../../src/core/colour/cieLab.ts'
import { deltaE2000 } from '../../src/core/colour/deltaE2000.ts'
import type { Triple } from '../../src/core/colour/triple.ts'

/** The median ΔE00 of pictures as shown, pixel by pixel. */
export const medianDeltaE = (pixels: readonly Triple[], others: readonly Triple[]): number => {
  const differences = pixels.map((pixel, i) =>
    deltaE2000(displayedRgbToLab(pixel), displayedRgbToLab(others[i] ?? pixel)),
  )
  return differences.sort((a, b) => a - b)[differences.length >> 1] ?? Number.NaN
}
