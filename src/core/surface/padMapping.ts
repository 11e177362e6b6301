import type { StickName } from './padControls.ts'
import type { SurfaceNumberId } from './surfaceNumber.ts'

/** What a stick moves: two numbers, across and up. */
export type StickUse = 'nothing' | 'lift-tint' | 'gamma-tint' | 'gain-tint' | 'pan-tilt'

/** What a button or trigger does. */
export type ButtonUse =
  | { readonly kind: 'nothing' }
  /** Moves a number as long as it is held, as fast as it is pressed. */
  | { readonly kind: 'number'; readonly id: SurfaceNumberId; readonly direction: 1 | -1 }
  /** Runs a command of the program. */
  | { readonly kind: 'command'; readonly id: string }
  /** Makes everything slow while it is held. */
  | { readonly kind: 'fine' }
  /** Gives the other controls their second use while it is held. */
  | { readonly kind: 'second' }

/** The two uses of a control; without a second one the first holds always. */
export type Uses<Use> = { readonly first: Use; readonly second?: Use }

export type PadMapping = {
  readonly sticks: Readonly<Record<StickName, Uses<StickUse>>>
  /** By index; a button that is not here does nothing. */
  readonly buttons: Readonly<Record<number, Uses<ButtonUse>>>
}

/** The numbers a stick moves, across and up: a tint as a vectorscope shows it, Cb across, Cr up. */
export const STICK_NUMBERS: Readonly<
  Record<StickUse, readonly [x: SurfaceNumberId, y: SurfaceNumberId] | undefined>
> = {
  nothing: undefined,
  'lift-tint': ['lift-cb', 'lift-cr'],
  'gamma-tint': ['gamma-cb', 'gamma-cr'],
  'gain-tint': ['gain-cb', 'gain-cr'],
  'pan-tilt': ['pan', 'tilt'],
}

const moves = (id: SurfaceNumberId, direction: 1 | -1): ButtonUse => ({
  kind: 'number',
  id,
  direction,
})

const command = (id: string): Uses<ButtonUse> => ({ first: { kind: 'command', id } })

/**
 * What the pad does until told otherwise. The sticks tint; the left hand's fingers hold black, the
 * right hand's white; with the second use these are gamma and saturation. The strip runs downward,
 * and so do the cues on the left cluster.
 */
export const FIRST_PAD_MAPPING: PadMapping = {
  sticks: {
    left: { first: 'lift-tint', second: 'gamma-tint' },
    right: { first: 'gain-tint', second: 'pan-tilt' },
  },
  buttons: {
    0: command('play'),
    1: command('scanned'),
    2: { first: { kind: 'second' } },
    3: command('undo'),
    4: { first: moves('lift-all', 1), second: moves('gamma-all', 1) },
    5: { first: moves('gain-all', 1), second: moves('saturation', 1) },
    6: { first: moves('lift-all', -1), second: moves('gamma-all', -1) },
    7: { first: moves('gain-all', -1), second: moves('saturation', -1) },
    8: command('step-back'),
    9: command('step-on'),
    10: { first: { kind: 'fine' } },
    11: { first: { kind: 'fine' } },
    12: command('cue-back'),
    13: command('cue-on'),
    14: { first: { kind: 'second' } },
    15: command('next-needing'),
  },
}

export const activeUse = <Use>(uses: Uses<Use>, isSecond: boolean): Use =>
  isSecond && uses.second !== undefined ? uses.second : uses.first

/** The mapping with another use of a button. */
export const withButtonUse = (
  mapping: PadMapping,
  index: number,
  which: keyof Uses<ButtonUse>,
  use: ButtonUse,
): PadMapping => {
  const before = mapping.buttons[index] ?? { first: { kind: 'nothing' } }
  return {
    ...mapping,
    buttons: { ...mapping.buttons, [index]: { ...before, [which]: use } },
  }
}

/** The mapping with another use of a stick. */
export const withStickUse = (
  mapping: PadMapping,
  stick: StickName,
  which: keyof Uses<StickUse>,
  use: StickUse,
): PadMapping => ({
  ...mapping,
  sticks: { ...mapping.sticks, [stick]: { ...mapping.sticks[stick], [which]: use } },
})
