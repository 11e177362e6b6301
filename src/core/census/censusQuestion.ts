import type { Grade } from '../colour/grade.ts'
import type { MatrixName } from '../picture/planes.ts'
import { levelLimits } from '../tolerance/levelLimits.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import { figureWeights } from './figureWeights.ts'
import { type GradeCurves, gradeCurves } from './gradeCurves.ts'

/** A grade and a profile, made ready to be asked of many colours. */
export type CensusQuestion = {
  readonly curves: GradeCurves
  /** Weights of R′, G′, B′, Y′, and where composite is limited of its luma, U and V. */
  readonly weights: Float64Array
  /** Low and high limit of R′, G′, B′, Y′, and of the lowest and highest composite peak. */
  readonly limits: Float64Array
  readonly hasComposite: boolean
}

/** `range`: the box around all colours that will be asked after. */
export const censusQuestion = (
  grade: Grade,
  matrix: MatrixName,
  profile: ToleranceProfile,
  range: Float32Array,
): CensusQuestion => {
  const hasComposite = profile.composite !== null
  const { rgb, luma, composite } = levelLimits(profile)
  return {
    curves: gradeCurves(grade, range),
    weights: figureWeights(grade.saturation, matrix, hasComposite),
    limits: Float64Array.from([rgb, rgb, rgb, luma, composite, composite].flat()),
    hasComposite,
  }
}

/** Whether a colour, or all of a box, is inside, or outside, or that is not settled. */
export type Settled = 'inside' | 'outside' | 'open'

/** What bounds of the figures (least and most of each) settle. */
export const settleFigures = (
  least: Float64Array,
  most: Float64Array,
  { limits, hasComposite }: CensusQuestion,
): Settled => {
  const figures = hasComposite ? 6 : 4
  let settled: Settled = 'inside'
  for (let f = 0; f < figures; f++) {
    const low = least[f] as number
    const high = most[f] as number
    const lowest = limits[2 * f] as number
    const highest = limits[2 * f + 1] as number
    if (high < lowest || low > highest) return 'outside'
    if (low < lowest || high > highest) settled = 'open'
  }
  return settled
}
