import { IDENTITY_GRADE } from '../core/colour/grade.ts'
import type { HeldId } from '../core/job/recordIds.ts'
import type { Coding, Planes } from '../core/picture/planes.ts'
import {
  type PointFigures,
  pixelAt,
  pointColour,
  pointDifference,
  pointFigures,
} from '../core/picture/pointReading.ts'
import type { Frame } from '../core/time/frame.ts'
import type { ScanPoint } from './pointing.ts'
import { measuredCoding, measuredGrade } from './pointValues.ts'
import { jobOf } from './queries.ts'
import type { AppState } from './state.ts'

/** A frame as it was read from the scan. */
type ReadFrame = { readonly frame: Frame; readonly planes: Planes; readonly coding: Coding }

export type PointRead = {
  readonly pixel: { readonly x: number; readonly y: number }
  readonly figures: PointFigures
  /** ΔE00 from the held frame at the same place of its scan. */
  readonly difference: number | undefined
}

/** The held frame, or the still, that the picture is compared with. */
export const heldAgainst = ({ view }: AppState): HeldId | undefined =>
  view.against.kind === 'held' ? view.against.id : undefined

/**
 * What a place measures on a frame by the values in force, or proposed; and how far it is there
 * from `held`, which keeps the grade it was held with.
 */
export const readPoint = (
  state: AppState,
  shown: ReadFrame,
  held: ReadFrame | undefined,
  place: ScanPoint,
): PointRead | undefined => {
  const { pointSize } = state.instruments
  const grade = measuredGrade(state, shown.frame)
  if (!grade) return undefined
  const coding = measuredCoding(state, shown.coding)
  const colour = pointColour({ planes: shown.planes, coding, grade }, place, pointSize)
  const heldId = heldAgainst(state)
  const kept = heldId === undefined ? undefined : jobOf(state)?.held[heldId]
  const heldGrade = kept?.grade ?? IDENTITY_GRADE
  const reference = held && pointColour({ ...held, grade: heldGrade }, place, pointSize)
  return {
    pixel: pixelAt(shown.planes, place),
    figures: pointFigures(colour, coding.matrix),
    difference: reference && pointDifference(colour, reference),
  }
}
