import type { MidiBinding } from './midiBinding.ts'
import { FIRST_PAD_MAPPING, type PadMapping } from './padMapping.ts'
import type { Response } from './stickResponse.ts'
import type { SpeedOf } from './surfaceNumber.ts'

/** How a person has set up game pad and MIDI control surfaces. */
export type SurfaceSetup = {
  readonly response: Response
  /** How far numbers move in a second at full deflection, in their own units. */
  readonly speeds: Readonly<Record<SpeedOf, number>>
  /** The part of the speed that is left while the button for fine is held. */
  readonly fine: number
  readonly pad: PadMapping
  readonly midi: {
    /** Whether the browser is to be asked for MIDI. */
    readonly isOn: boolean
    readonly bindings: readonly MidiBinding[]
  }
}

export const FIRST_SURFACE_SETUP: SurfaceSetup = {
  response: { deadZone: 0.12, exponent: 2 },
  speeds: { tint: 0.08, level: 0.2, framing: 0.25 },
  fine: 0.2,
  pad: FIRST_PAD_MAPPING,
  midi: { isOn: false, bindings: [] },
}

/** What the numbers of a setup may be. */
export const SETUP_LIMITS = {
  deadZone: [0, 0.9],
  exponent: [0.5, 5],
  speed: [0.01, 2],
  fine: [0.01, 1],
} as const
