import * as v from 'valibot'
import type { ButtonUse, StickUse, Uses } from './padMapping.ts'
import { SURFACE_NUMBERS, type SurfaceNumberId } from './surfaceNumber.ts'
import { FIRST_SURFACE_SETUP, SETUP_LIMITS, type SurfaceSetup } from './surfaceSetup.ts'

const within = ([low, high]: readonly [number, number]) =>
  v.pipe(v.number(), v.minValue(low), v.maxValue(high))
const whole = (low: number, high: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(low), v.maxValue(high))

const numberId = v.picklist(SURFACE_NUMBERS.map(({ id }): SurfaceNumberId => id))
const command = v.strictObject({
  kind: v.literal('command'),
  id: v.pipe(v.string(), v.maxLength(100)),
})

const stickUse: v.GenericSchema<StickUse> = v.picklist([
  'nothing',
  'lift-tint',
  'gamma-tint',
  'gain-tint',
  'pan-tilt',
])
const buttonUse: v.GenericSchema<ButtonUse> = v.variant('kind', [
  v.strictObject({ kind: v.picklist(['nothing', 'fine', 'second']) }),
  v.strictObject({ kind: v.literal('number'), id: numberId, direction: v.picklist([1, -1]) }),
  command,
])
const uses = <Use>(use: v.GenericSchema<Use>): v.GenericSchema<Uses<Use>> =>
  v.strictObject({ first: use, second: v.exactOptional(use) }) as v.GenericSchema<Uses<Use>>

const padSchema = v.strictObject({
  sticks: v.strictObject({ left: uses(stickUse), right: uses(stickUse) }),
  buttons: v.record(v.pipe(v.string(), v.regex(/^\d{1,2}$/)), uses(buttonUse)),
})

const bindingSchema = v.strictObject({
  control: v.strictObject({
    kind: v.picklist(['change', 'note', 'bend']),
    channel: whole(1, 16),
    number: whole(0, 127),
  }),
  coding: v.picklist(['position', 'twos-complement', 'offset-binary']),
  use: v.variant('kind', [
    v.strictObject({ kind: v.picklist(['number', 'reset']), id: numberId }),
    command,
  ]),
})

const first = FIRST_SURFACE_SETUP

/** Each part that cannot be read is as it was at first; the others are kept. */
const setupSchema = v.object({
  response: v.fallback(
    v.strictObject({
      deadZone: within(SETUP_LIMITS.deadZone),
      exponent: within(SETUP_LIMITS.exponent),
    }),
    first.response,
  ),
  speeds: v.fallback(
    v.strictObject({
      tint: within(SETUP_LIMITS.speed),
      level: within(SETUP_LIMITS.speed),
      framing: within(SETUP_LIMITS.speed),
    }),
    first.speeds,
  ),
  fine: v.fallback(within(SETUP_LIMITS.fine), first.fine),
  pad: v.fallback(padSchema, first.pad as v.InferOutput<typeof padSchema>),
  midi: v.fallback(
    v.strictObject({
      isOn: v.boolean(),
      bindings: v.pipe(v.array(bindingSchema), v.maxLength(500)),
    }),
    { isOn: false, bindings: [] },
  ),
})

/**
 * A setup from what a browser kept of it, whatever that is: a part that is missing or broken is as
 * it was at first.
 */
export const readSetup = (kept: unknown): SurfaceSetup => {
  const read = v.safeParse(setupSchema, kept)
  return read.success ? (read.output as SurfaceSetup) : first
}
