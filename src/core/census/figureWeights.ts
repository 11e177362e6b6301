import { SATURATION_WEIGHTS } from '../colour/grade.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { Triple } from '../colour/triple.ts'
import type { MatrixName } from '../picture/planes.ts'

/** What is held to limits: R′, G′, B′ and Y′ of the graded picture. */
export const FIGURES = 4

/** The weights of each figure on R′, G′, B′ before saturation: twelve numbers. */
export const figureWeights = (saturation: number, matrix: MatrixName): Float64Array => {
  const row = (weights: Triple): readonly number[] => {
    const grey = (1 - saturation) * (weights[0] + weights[1] + weights[2])
    return weights.map((weight, c) => saturation * weight + grey * (SATURATION_WEIGHTS[c] ?? 0))
  }
  const rows = [row([1, 0, 0]), row([0, 1, 0]), row([0, 0, 1]), row(LUMA_WEIGHTS[matrix])]
  return Float64Array.from(rows.flat())
}
