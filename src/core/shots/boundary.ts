import type { Frame } from '../time/frame.ts'

export type BoundaryKind = 'cut' | 'dissolve' | 'fade-out' | 'fade-in' | 'dip'

/**
 * A change of shot. A cut has `first` = `last` = the first frame of the new shot; a gradual change
 * has the first and last frames that differ because of it. `confidence` 0…1.
 */
export type Boundary = {
  readonly kind: BoundaryKind
  readonly first: Frame
  readonly last: Frame
  readonly confidence: number
}
