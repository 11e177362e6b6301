import type { HeldId } from '../core/job/recordIds.ts'

/** How pictures stand to each other: the graded one alone, or with others. */
export type Arrangement = 'alone' | 'wipe' | 'side-by-side' | 'difference'

/** What the graded picture is compared with. */
export type Against =
  | { readonly kind: 'scanned' }
  | { readonly kind: 'held'; readonly id: HeldId }
  /** One of the cue's alternates by its place, from 0. */
  | { readonly kind: 'alternate'; readonly index: number }
  /** All of the cue's alternates; where only one fits, the first. */
  | { readonly kind: 'alternates' }

/**
 * What is assumed of the display. The signal is made for BT.1886; 'srgb' and 'display-p3' turn it
 * into those spaces, 'as-coded' sends it as it is to a display set to BT.1886.
 */
export type DisplaySpace = 'srgb' | 'display-p3' | 'as-coded'

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
}
