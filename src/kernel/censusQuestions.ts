import { at } from '../core/base/assert.ts'
import { outward } from '../core/census/censusData.ts'
import type { CensusQuestion } from '../core/census/censusQuestion.ts'
import { PIECE, PIECES } from '../core/census/gradeCurves.ts'

/** Bytes of a question in kernel memory: see `assembly/censusBounds.ts`. */
export const writtenQuestionBytes = {
  curves: 4 * (8 + 3 * PIECES * PIECE),
  weights: 4 * 2 * 24,
  limits: 4 * 2 * 16,
}

/** Low and high of four figures, twice. */
export const ENDS_BYTES = 4 * 16

/** Writes a question at its addresses. */
export const writeQuestion = (
  buffer: ArrayBufferLike,
  to: { readonly curvesAt: number; readonly weightsAt: number; readonly limitsAt: number },
  { curves, weights, limits, hasComposite }: CensusQuestion,
): void => {
  const { starts, piecesPerUnit, pieces } = curves
  const table = new Float32Array(buffer, to.curvesAt, writtenQuestionBytes.curves / 4)
  table.set(starts)
  table.set(piecesPerUnit, 4)
  table.set(pieces, 8)
  // Of each channel the weights above 0 in four figures, then those below.
  const signed = new Float32Array(buffer, to.weightsAt, writtenQuestionBytes.weights / 4).fill(0)
  for (let f = 0; f < weights.length / 3; f++)
    for (let c = 0; c < 3; c++) {
      const weight = at(weights, f * 3 + c)
      const row = (f >> 2) * 24 + c * 8 + (f & 3)
      signed[weight < 0 ? row + 4 : row] = weight
    }
  // R′, G′, B′, Y′, then the two peaks and two that are free.
  const ends = new Float32Array(buffer, to.limitsAt, writtenQuestionBytes.limits / 4)
  const figures = hasComposite ? 6 : 4
  for (let f = 0; f < 8; f++) {
    const lowest = f < figures ? at(limits, f * 2) : -Infinity
    const highest = f < figures ? at(limits, f * 2 + 1) : Infinity
    const row = (f >> 2) * 16 + (f & 3)
    ends[row] = outward(lowest, -1)
    ends[row + 4] = outward(lowest, 1)
    ends[row + 8] = outward(highest, -1)
    ends[row + 12] = outward(highest, 1)
  }
}

/** The ends the kernel found, in the order of the reference's figures. */
export const endsOf = (buffer: ArrayBufferLike, endsAt: number) => {
  const ends = new Float32Array(buffer, endsAt, ENDS_BYTES / 4)
  return {
    lows: Float64Array.of(...ends.slice(0, 4), at(ends, 8), at(ends, 9)),
    highs: Float64Array.of(...ends.slice(4, 8), at(ends, 12), at(ends, 13)),
  }
}
