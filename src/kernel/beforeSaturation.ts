import { SATURATION_WEIGHTS } from '../core/colour/grade.ts'
import type { Triple } from '../core/colour/triple.ts'

/**
 * Saturation taken into a row of weights on R′, G′, B′: the weights on the unsaturated colour that
 * give what `row` gives on the saturated one.
 */
export const beforeSaturation = (row: Triple, saturation: number): Triple => {
  const share = (1 - saturation) * (row[0] + row[1] + row[2])
  const [wr, wg, wb] = SATURATION_WEIGHTS
  return [
    saturation * row[0] + share * wr,
    saturation * row[1] + share * wg,
    saturation * row[2] + share * wb,
  ]
}
