import type { MidiCoding, MidiUse } from '../core/surface/midiBinding.ts'
import type { StickName } from '../core/surface/padControls.ts'
import type { ButtonUse, StickUse } from '../core/surface/padMapping.ts'
import type { PadReading } from '../core/surface/padReading.ts'
import type { SurfaceSetup } from '../core/surface/surfaceSetup.ts'
import type { AppStore } from './appStore.ts'

/** What waits for a control to be moved, which is then given it. */
export type Learning =
  | { readonly of: 'button'; readonly use: ButtonUse }
  | { readonly of: 'stick'; readonly use: StickUse }
  | { readonly of: 'midi'; readonly use: MidiUse; readonly coding: MidiCoding }

/** Whether MIDI is in use, and why not. */
export type MidiState = 'off' | 'asking' | 'on' | 'refused' | 'missing'

/** The control surfaces as they are now; how they are set up is in the preferences. */
export type Surface = {
  /** The game pad in use. */
  readonly pad: { readonly name: string; readonly isStandard: boolean } | undefined
  /** Where its controls are; told only while somebody watches. */
  readonly reading: PadReading | undefined
  readonly isWatched: boolean
  readonly midi: MidiState
  /** The names of the MIDI inputs that are heard. */
  readonly inputs: readonly string[]
  /** Controls that do not act yet, by name: they have still to pass the present value. */
  readonly waiting: readonly string[]
  readonly learning: Learning | undefined
  /** The control that was given something last. */
  readonly learnt: { readonly of: 'pad' | 'midi'; readonly name: string } | undefined
}

export const INITIAL_SURFACE: Surface = {
  pad: undefined,
  reading: undefined,
  isWatched: false,
  midi: 'off',
  inputs: [],
  waiting: [],
  learning: undefined,
  learnt: undefined,
}

/** The name of a stick as a control that can be given something. */
export const stickName = (stick: StickName): string => `${stick} stick`

export const setSurface = (store: AppStore, change: Partial<Surface>): void =>
  store.setState(({ surface }) => ({ surface: { ...surface, ...change } }))

/** Changes how control surfaces are set up. */
export const setSurfaceSetup = (
  store: AppStore,
  change: (setup: SurfaceSetup) => Partial<SurfaceSetup>,
): void =>
  store.setState(({ preferences }) => ({
    preferences: {
      ...preferences,
      surface: { ...preferences.surface, ...change(preferences.surface) },
    },
  }))

/** Tells where controls are, as long as `isWatched`. */
export const watchSurface = (store: AppStore, isWatched: boolean): void =>
  setSurface(store, { isWatched, reading: undefined, learning: undefined, learnt: undefined })
