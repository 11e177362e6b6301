import { STICKS } from './padControls.ts'
import { activeUse, type ButtonUse, STICK_NUMBERS } from './padMapping.ts'
import { isPressed, type PadReading } from './padReading.ts'
import { axisResponse, stickResponse } from './stickResponse.ts'
import type { SurfaceNumberId } from './surfaceNumber.ts'
import { surfaceNumber } from './surfaceNumber.ts'
import type { SurfaceSetup } from './surfaceSetup.ts'

const isHolding = (
  reading: PadReading,
  { pad }: SurfaceSetup,
  kind: Extract<ButtonUse['kind'], 'fine' | 'second'>,
): boolean =>
  Object.entries(pad.buttons).some(
    ([index, { first }]) => first.kind === kind && isPressed(reading, Number(index)),
  )

/** Whether the other controls have their second use now. */
export const isSecondUse = (reading: PadReading, setup: SurfaceSetup): boolean =>
  isHolding(reading, setup, 'second')

/**
 * How fast a pad moves the numbers of a cue, in their own units a second; a number that rests is
 * not in it. Controls that move the same number add up.
 */
export const padSpeeds = (
  reading: PadReading,
  setup: SurfaceSetup,
): ReadonlyMap<SurfaceNumberId, number> => {
  const speeds = new Map<SurfaceNumberId, number>()
  const isSecond = isSecondUse(reading, setup)
  const part = isHolding(reading, setup, 'fine') ? setup.fine : 1
  const add = (id: SurfaceNumberId, deflection: number): void => {
    if (deflection === 0) return
    const speed = deflection * part * setup.speeds[surfaceNumber(id).speed]
    speeds.set(id, (speeds.get(id) ?? 0) + speed)
  }
  for (const stick of STICKS) {
    const numbers = STICK_NUMBERS[activeUse(setup.pad.sticks[stick], isSecond)]
    if (!numbers) continue
    const { x, y } = stickResponse(reading.sticks[stick], setup.response)
    add(numbers[0], x)
    // A tilt above 0 moves the view down.
    add(numbers[1], numbers[1] === 'tilt' ? 0 - y : y)
  }
  for (const [index, uses] of Object.entries(setup.pad.buttons)) {
    const use = activeUse(uses, isSecond)
    if (use.kind !== 'number') continue
    const travel = axisResponse(reading.buttons[Number(index)] ?? 0, setup.response)
    add(use.id, use.direction * travel)
  }
  return speeds
}
