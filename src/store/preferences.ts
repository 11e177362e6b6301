import { FIRST_SURFACE_SETUP, type SurfaceSetup } from '../core/surface/surfaceSetup.ts'

/** Which hand works the keys; the other holds the pointer or the stick. */
export type Hand = 'left' | 'right'

/** Sizes of text and controls, in percent of the usual one. */
export const TEXT_SIZES = [100, 110, 125, 150, 175, 200] as const

export type TextSize = (typeof TEXT_SIZES)[number]

/** What a person has set up for this browser; not part of any job. */
export type Preferences = {
  readonly hand: Hand
  /** Keys that differ from the layout's, by command id; an empty list takes a command's keys away. */
  readonly keys: Readonly<Record<string, readonly string[]>>
  /** Hints that were put away, or were no longer needed. */
  readonly hintsSeen: readonly string[]
  readonly showsHints: boolean
  readonly textSize: TextSize
  /** Game pad and MIDI control surfaces. */
  readonly surface: SurfaceSetup
}

export const INITIAL_PREFERENCES: Preferences = {
  hand: 'left',
  keys: {},
  hintsSeen: [],
  showsHints: true,
  textSize: 100,
  surface: FIRST_SURFACE_SETUP,
}
