import { type Grade, gradeChannel } from './grade.ts'
import { GRADE_BOUNDS } from './gradeBounds.ts'
import { type GradeColumn, stageValue, withStageValue } from './gradeColumns.ts'

/** Where a curve of the transfer plot can be taken hold of. */
export type TransferHandle = 'black' | 'mid' | 'white'

/** The scanned level under each handle. */
export const HANDLE_AT: Readonly<Record<TransferHandle, number>> = { black: 0, mid: 0.5, white: 1 }

/** What a scanned level becomes in one channel, or by the *all* of each triple. */
export const transferLevel = (grade: Grade, column: GradeColumn, scanned: number): number =>
  gradeChannel(
    scanned,
    stageValue(grade, 'lift', column),
    stageValue(grade, 'gamma', column),
    stageValue(grade, 'gain', column),
  )

/** A level under which no gamma is told. */
const SMALL = 1e-4

/**
 * The grade whose curve goes through `level` at a handle: black sets lift, white sets gain (each the
 * level before the power stage that comes out as `level`), mid sets gamma (0.1…5). Lift stays under
 * gain. Where no gamma takes the mid there, as where lift and gain have it black or past peak, the
 * grade stays.
 */
export const withTransferHandle = (
  grade: Grade,
  column: GradeColumn,
  handle: TransferHandle,
  level: number,
): Grade => {
  const lift = stageValue(grade, 'lift', column)
  const gain = stageValue(grade, 'gain', column)
  const gamma = stageValue(grade, 'gamma', column)
  if (handle === 'mid') {
    const before = (lift + gain) / 2
    const isTold = before > SMALL && before < 1 - SMALL && level > SMALL && level < 1 - SMALL
    if (!isTold) return grade
    const wanted = Math.log(before) / Math.log(level)
    const [low, high] = GRADE_BOUNDS.gamma
    return withStageValue(grade, 'gamma', column, Math.min(high, Math.max(low, wanted)))
  }
  const before = level > 0 ? level ** gamma : level
  return handle === 'black'
    ? withStageValue(grade, 'lift', column, Math.min(before, gain))
    : withStageValue(grade, 'gain', column, Math.max(before, lift))
}
