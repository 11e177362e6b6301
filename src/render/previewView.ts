import type { DisplaySpace } from '../core/colour/displaySignal.ts'
import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { Coding, MatrixName, Planes } from '../core/picture/planes.ts'
import type { TileArea } from '../core/picture/tileLayout.ts'
import type { LevelLimits } from '../core/tolerance/levelLimits.ts'

/**
 * One picture that stands beside the main one: a frame, how it is read, and what is done to it. On
 * its way to a worker the frame is named by a number.
 */
export type Side<Frame = Planes> = {
  readonly planes: Frame
  readonly coding: Coding
  readonly grade: Grade
  readonly framing: Framing
  /** Whether excursions are marked on it too, where they are marked at all. */
  readonly isMarked: boolean
}

/** How the main picture stands to others. A side of another shape is fitted in, black round it. */
export type Compare<Frame = Planes> =
  | { readonly kind: 'none' }
  /** `at` 0 (left) … 1 (right): the other left of it, the main picture right. */
  | { readonly kind: 'wipe'; readonly at: number; readonly other: Side<Frame> }
  /** Each in an area of its own, grey between them. */
  | {
      readonly kind: 'tiles'
      readonly main: TileArea
      readonly others: readonly { readonly side: Side<Frame>; readonly area: TileArea }[]
    }
  /** `DIFFERENCE_GAIN` times |main − other| of each channel, none of it black. */
  | { readonly kind: 'difference'; readonly other: Side<Frame> }

export const DIFFERENCE_GAIN = 4

/** Levels outside which a pixel is marked, before any filter; luma is that of `matrix`. */
export type ExcursionLimits = LevelLimits & { readonly matrix: MatrixName }

/** How a frame is to be drawn. */
export type PreviewView<Frame = Planes> = {
  readonly grade: Grade
  readonly framing: Framing
  readonly compare: Compare<Frame>
  readonly excursions: ExcursionLimits | null
  /** While it plays, the picture is sampled more coarsely, so that it keeps its time. */
  readonly isMoving: boolean
  /** What the canvas is made for; as coded where nothing is said. */
  readonly display?: DisplaySpace
}
