import type { StickName } from './padControls.ts'
import type { Deflection } from './stickResponse.ts'

/** Where the controls of a game pad are. */
export type PadReading = {
  /** Across and up, −1…1: up is above 0. */
  readonly sticks: Readonly<Record<StickName, Deflection>>
  /** How far each button is pressed, 0…1, by index. */
  readonly buttons: readonly number[]
}

/** What a browser tells of a pad, as far as it is read here. */
export type PadSnapshot = {
  readonly axes: readonly number[]
  readonly buttons: readonly { readonly value: number; readonly pressed: boolean }[]
}

/**
 * Reads a pad: axes 0 and 1 are the left stick, 2 and 3 the right one, −1 left and up (W3C
 * Gamepad, clause “Remapping”). What is not finite or not there is at rest.
 */
export const readPad = ({ axes, buttons }: PadSnapshot): PadReading => {
  const axis = (index: number): number => {
    const value = axes[index] ?? 0
    return Number.isFinite(value) ? Math.min(1, Math.max(-1, value)) : 0
  }
  const up = (index: number): number => 0 - axis(index)
  return {
    sticks: { left: { x: axis(0), y: up(1) }, right: { x: axis(2), y: up(3) } },
    buttons: buttons.map(({ value, pressed }) => {
      const travel = pressed && !(value > 0) ? 1 : value
      return Number.isFinite(travel) ? Math.min(1, Math.max(0, travel)) : 0
    }),
  }
}

/** A button counts as pressed from here on; a trigger has no click. */
export const PRESSED_FROM = 0.5

export const isPressed = ({ buttons }: PadReading, index: number): boolean =>
  (buttons[index] ?? 0) >= PRESSED_FROM
