import type { Grade } from '../core/colour/grade.ts'
import type { Framing } from '../core/picture/framing.ts'
import type { MatrixName } from '../core/picture/planes.ts'
import type { LevelLimits } from '../core/tolerance/levelLimits.ts'

/** What is compared: nothing, the scanned picture alone, or both beside a wipe. */
export type Compare =
  | { readonly kind: 'none' }
  | { readonly kind: 'scanned' }
  /** `at` 0 (left) … 1 (right): scanned left of it, graded right, both framed alike. */
  | { readonly kind: 'wipe'; readonly at: number }

/** Levels outside which a pixel is marked, before any filter; luma is that of `matrix`. */
export type ExcursionLimits = LevelLimits & { readonly matrix: MatrixName }

/** How a frame is to be drawn. */
export type PreviewView = {
  readonly grade: Grade
  readonly framing: Framing
  readonly compare: Compare
  readonly excursions: ExcursionLimits | null
  /** While it plays, the picture is sampled more coarsely, so that it keeps its time. */
  readonly isMoving: boolean
}
