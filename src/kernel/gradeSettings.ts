import { codeScale } from '../core/colour/codeValues.ts'
import type { Grade } from '../core/colour/grade.ts'
import { yCbCrToRgbFactors } from '../core/colour/yCbCr.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import type { Settings } from './kernelModule.ts'

/** Decoding, lift and gain as factors on code values (see `assembly/gradeSettings.ts`). */
export const gradeSettings = (
  { depth, layout }: Planes,
  { matrix, range }: Coding,
  { lift, gain, gamma }: Grade,
): Settings => {
  const { black, peak, chromaZero, chromaHalf } = codeScale(depth, range)
  const isInterpolated = layout === '420' || layout === '422'
  const parts = isInterpolated ? 4 : 1
  const toSignal = 1 / (peak - black)
  const toChroma = 1 / (2 * chromaHalf * parts)
  const { crToR, cbToB, cbToG, crToG } = yCbCrToRgbFactors(matrix)
  const [slopeR, slopeG, slopeB] = [gain[0] - lift[0], gain[1] - lift[1], gain[2] - lift[2]]
  return {
    blackCode: black,
    chromaZeroCode: chromaZero * parts,
    lumaToR: slopeR * toSignal,
    lumaToG: slopeG * toSignal,
    lumaToB: slopeB * toSignal,
    crToR: slopeR * crToR * toChroma,
    cbToG: slopeG * cbToG * toChroma,
    crToG: slopeG * crToG * toChroma,
    cbToB: slopeB * cbToB * toChroma,
    liftR: lift[0],
    liftG: lift[1],
    liftB: lift[2],
    isLinear: gamma.every((value) => value === 1),
  }
}

/** Lift and gain of a grade that comes after a base (see `assembly/baseSettings.ts`). */
export const gradeAfterBase = ({ lift, gain, gamma }: Grade): Settings => ({
  slopeR: gain[0] - lift[0],
  slopeG: gain[1] - lift[1],
  slopeB: gain[2] - lift[2],
  afterLiftR: lift[0],
  afterLiftG: lift[1],
  afterLiftB: lift[2],
  isPoweredAfter: gamma.some((value) => value !== 1),
})
