import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import { fewerColours } from '../census/fewerColours.ts'
import type { WeightedColours } from '../census/weightedColours.ts'
import type { Grade } from '../colour/grade.ts'
import type { MatrixName } from '../picture/planes.ts'
import type { Limits, ToleranceProfile } from '../tolerance/profile.ts'
import { type ChangedNumber, changedNumbers } from './changedNumbers.ts'
import { contrastFloor } from './contrastFloor.ts'
import type { Descent } from './descendMoves.ts'
import { excessCost } from './excessCost.ts'
import { gradeCost } from './gradeCost.ts'
import { gradeVector, vectorGrade } from './gradeVector.ts'
import { keptContrast } from './keptContrast.ts'
import { leastPassing } from './leastPassing.ts'
import { squeezedGrade } from './squeezedGrade.ts'

export type BringInsideQuestion = {
  /** Colours of the cue, R′G′B′ before the grade; a few thousand at most. */
  readonly colours: WeightedColours
  readonly grade: Grade
  readonly matrix: MatrixName
  readonly profile: ToleranceProfile
  /**
   * Part (0…1) of the cue's pixels that are outside under a grade, before any filter: what its
   * census tells. Asked some 100 times.
   */
  readonly shareOutside: (grade: Grade) => number
}

export type BroughtInside = {
  readonly grade: Grade
  /** The numbers that are others now, in the order of the bench. */
  readonly changed: readonly ChangedNumber[]
  /** Mean ΔE00 between the colours as they were shown and as they are shown now. */
  readonly meanDeltaE: number
  /** Parts of the pixels that were and are outside, 0…1. */
  readonly shareBefore: number
  readonly shareAfter: number
}

/** Colours that the change is summed over, and the excess: in a search, and to settle its result. */
const COST_COLOURS = 320
const SEARCH_COLOURS = 800
const SETTLE_COLOURS = 4096

/** Less of the contrast kept is flattening, not bringing inside: a choice of this project. */
const LEAST_CONTRAST = 0.5

const percent = (part: number): string => `${(part * 100).toFixed(2)} %`

/** The levels at which greys are inside. */
const greysInside = ({ rgb, luma, composite }: ToleranceProfile): Limits => {
  const all = [rgb, luma, composite].filter((limits) => limits !== null)
  return [
    Math.max(...all.map(([lowest]) => lowest)),
    Math.min(...all.map(([, highest]) => highest)),
  ]
}

/** Why no grey is inside the profile; undefined where one is. */
const contradiction = (profile: ToleranceProfile): Result<never> | undefined => {
  const [low, high] = greysInside(profile)
  return low < high
    ? undefined
    : fail(
        problem(
          'conflict',
          `The limits of “${profile.name}” leave no level inside: the highest lower limit is ${percent(low)}, the lowest upper limit ${percent(high)}; change the profile.`,
          { field: 'info.tolerance' },
        ),
      )
}

const wrongQuestion = ({ colours, grade }: BringInsideQuestion): Result<never> | undefined => {
  if (!colours.weights.some((weight) => weight > 0))
    return fail(problem('missing', 'The cue has no measured colours; measure its frames first.'))
  if (![...gradeVector(grade), ...colours.colours].every(Number.isFinite))
    return fail(
      problem('out-of-range', 'The grade or a colour has a number that is not finite; correct it.'),
    )
  return undefined
}

/**
 * The smallest change of a cue's grade that makes it pass its profile: of the grades by which at
 * most the profile's area of the pixels is outside, that with the least mean ΔE00 from what is shown
 * now. Signal that displays clip but the limits allow is kept where that costs little. Where fewer
 * numbers do it nearly as well (within 10 %, or 0.15 of mean ΔE00), only these change. Changed
 * numbers are rounded as the bench has them, and pass as rounded. A cue that passes keeps its grade.
 *
 * The share is that of all pixels of the cue, unfiltered. A profile that is filtered, or one frame
 * with more outside than the others, is for measuring the frames to confirm.
 *
 * The least is looked for by descent from the present grade, not proved.
 *
 * Flattening is no way: of each channel's steps from shadows to highlights half is kept of what the
 * limits leave room for, of saturation (or of 1, where it is more) 40 %.
 *
 * Refuses a cue without colours, numbers that are not finite, limits that leave no grey inside, and
 * where no grade is found, or only one that keeps less than half of the contrast that is shown.
 */
export const bringInside = (question: BringInsideQuestion): Result<BroughtInside> => {
  const { colours, grade, matrix, profile, shareOutside } = question
  const refusal = wrongQuestion(question)
  if (refusal) return refusal
  const shareBefore = shareOutside(grade)
  if (shareBefore <= profile.area)
    return ok({ grade, changed: [], meanDeltaE: 0, shareBefore, shareAfter: shareBefore })
  const hopeless = contradiction(profile)
  if (hopeless) return hopeless

  const present = gradeVector(grade)
  const [lowest, highest] = profile.rgb ?? profile.luma
  const costOver = (of: WeightedColours) =>
    gradeCost(of, present, Math.min(0, lowest), Math.max(1, highest))
  const cost = costOver(fewerColours(colours, COST_COLOURS))
  const floor = contrastFloor(colours, present, greysInside(profile))
  const descentOver = (most: number): Descent => ({
    present,
    cost,
    excess: excessCost(fewerColours(colours, most), matrix, profile),
    floor,
  })
  const passes = (vector: Float64Array) => shareOutside(vectorGrade(vector)) <= profile.area
  const vector = leastPassing(
    descentOver(SEARCH_COLOURS),
    descentOver(SETTLE_COLOURS),
    passes,
    squeezedGrade(colours, present, greysInside(profile)),
  )
  const kept = vector && keptContrast(colours, present, vector)
  if (!vector || kept === undefined || kept < LEAST_CONTRAST) {
    const why =
      kept === undefined
        ? 'no grade was found that passes and keeps the steps of each channel'
        : `the best grade that passes keeps ${percent(kept)} of the contrast, less than half`
    return fail(
      problem(
        'out-of-range',
        `${percent(shareBefore)} of the cue is outside “${profile.name}”, which allows ${percent(profile.area)}, and ${why}; split the cue, choose another profile, or grade it by hand.`,
        { field: 'grade' },
      ),
    )
  }
  const after = vectorGrade(vector)
  return ok({
    grade: after,
    changed: changedNumbers(grade, after),
    meanDeltaE: costOver(colours).shownAt(vector),
    shareBefore,
    shareAfter: shareOutside(after),
  })
}
