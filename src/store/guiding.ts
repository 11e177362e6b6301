import type { SoundFacts } from '../core/sound/measureSound.ts'
import type { AppStore } from './appStore.ts'

/** Hz above which an optical track is not listened to; null: all of it. Common practice. */
export const LOW_PASSES = [null, 5500, 5000] as const
export type LowPass = (typeof LOW_PASSES)[number]

/** The guide track on this computer: the job knows its name and where it lies, not its sound. */
export type Guiding = {
  /** The file that is open, by name; undefined: none. */
  readonly name: string | undefined
  /** What it measures; undefined while that is found out. */
  readonly facts: SoundFacts | undefined
  /** How much of it was measured, 0 to 1, while it is. */
  readonly measured: number | undefined
  /** Whether it is heard when the reel plays. */
  readonly isHeard: boolean
  readonly lowPass: LowPass
}

export const INITIAL_GUIDING: Guiding = {
  ...{ name: undefined, facts: undefined, measured: undefined, isHeard: true, lowPass: null },
}

export const setGuiding = (store: AppStore, change: Partial<Guiding>): void =>
  store.setState(({ guiding }) => ({ guiding: { ...guiding, ...change } }))
