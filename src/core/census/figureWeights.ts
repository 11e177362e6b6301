import { SATURATION_WEIGHTS } from '../colour/grade.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { Triple } from '../colour/triple.ts'
import type { MatrixName } from '../picture/planes.ts'
import { U_FACTOR, V_FACTOR } from '../tolerance/compositePeaks.ts'

const [KR, KG, KB] = LUMA_WEIGHTS.bt601

/** Luma, U and V of the composite signal: see `compositePeaks`. */
const COMPOSITE_WEIGHTS: readonly Triple[] = [
  LUMA_WEIGHTS.bt601,
  [-U_FACTOR * KR, -U_FACTOR * KG, U_FACTOR * (1 - KB)],
  [V_FACTOR * (1 - KR), -V_FACTOR * KG, -V_FACTOR * KB],
]

/**
 * The weights of R′, G′, B′ and Y′ on the graded R′, G′, B′ before saturation, three numbers each.
 * `composite` adds luma, U and V of the composite signal.
 */
export const figureWeights = (
  saturation: number,
  matrix: MatrixName,
  composite: boolean,
): Float64Array => {
  const row = (weights: Triple): readonly number[] => {
    const grey = (1 - saturation) * (weights[0] + weights[1] + weights[2])
    return weights.map((weight, c) => saturation * weight + grey * (SATURATION_WEIGHTS[c] ?? 0))
  }
  const rows = [row([1, 0, 0]), row([0, 1, 0]), row([0, 0, 1]), row(LUMA_WEIGHTS[matrix])]
  if (composite) rows.push(...COMPOSITE_WEIGHTS.map(row))
  return Float64Array.from(rows.flat())
}
