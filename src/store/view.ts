import type { DisplaySpace } from '../core/colour/displaySignal.ts'
import type { HeldId } from '../core/job/recordIds.ts'

/** How pictures stand to each other: the graded one alone, or with others. */
export type Arrangement = 'alone' | 'wipe' | 'side-by-side' | 'difference'

/** What the graded picture is compared with. */
export type Against =
  | { readonly kind: 'scanned' }
  /** A held frame of the job, or a still opened for this session. */
  | { readonly kind: 'held'; readonly id: HeldId }
  /** One of the cue's alternates by its place, from 0. */
  | { readonly kind: 'alternate'; readonly index: number }
  /** All of the cue's alternates; where only one fits, the first. */
  | { readonly kind: 'alternates' }

/** A still picture opened as a reference: for this session only, it is not kept in the job. */
export type OpenedStill = { readonly id: HeldId; readonly name: string }

export type View = {
  readonly arrangement: Arrangement
  readonly against: Against
  /** Where the wipe stands, 0 (left) … 1 (right): the other picture left of it, the graded right. */
  readonly wipeAt: number
  /** True while the scanned picture is looked at, as long as a key or button is held. */
  readonly isPeeking: boolean
  readonly showsExcursions: boolean
  readonly showsSafeAreas: boolean
  /** Shows the whole scan with the delivered frame on it, to be moved and resized. */
  readonly showsAperture: boolean
  readonly display: DisplaySpace
  readonly stills: readonly OpenedStill[]
}

export const INITIAL_VIEW: View = {
  arrangement: 'alone',
  against: { kind: 'scanned' },
  wipeAt: 0.5,
  isPeeking: false,
  showsExcursions: false,
  showsSafeAreas: false,
  showsAperture: false,
  display: 'srgb',
  stills: [],
}
