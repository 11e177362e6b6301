import type { MidiCoding, MidiUse } from '../../core/surface/midiBinding.ts'
import type { ButtonUse, StickUse } from '../../core/surface/padMapping.ts'
import { SURFACE_NUMBERS } from '../../core/surface/surfaceNumber.ts'
import { COMMANDS } from '../commands/registry.ts'

/** One thing a control can be given, under a heading of the list. */
export type UseOption<Use> = { readonly use: Use; readonly label: string; readonly group: string }

const commandUses = COMMANDS.map(({ id, label, group }) => ({
  use: { kind: 'command', id } as const,
  label,
  group,
}))

export const STICK_OPTIONS: readonly UseOption<StickUse>[] = [
  { use: 'nothing', label: 'nothing', group: '' },
  { use: 'lift-tint', label: 'shadow tint', group: '' },
  { use: 'gamma-tint', label: 'mid tint', group: '' },
  { use: 'gain-tint', label: 'highlight tint', group: '' },
  { use: 'pan-tilt', label: 'pan and tilt', group: '' },
]

export const stickUseLabel = (use: StickUse): string =>
  STICK_OPTIONS.find((option) => option.use === use)?.label ?? use

/** The heading of what holds as long as its button does; it cannot be a second use. */
export const HOLDS = 'While held'

/** All that a button or trigger can do: a number is moved up by one and down by another. */
export const BUTTON_OPTIONS: readonly UseOption<ButtonUse>[] = [
  { use: { kind: 'nothing' }, label: 'nothing', group: '' },
  { use: { kind: 'fine' }, label: 'fine while held', group: HOLDS },
  { use: { kind: 'second' }, label: 'second use while held', group: HOLDS },
  ...SURFACE_NUMBERS.flatMap(({ id, label }) =>
    ([1, -1] as const).map((direction) => ({
      use: { kind: 'number', id, direction } as const,
      label: `${label} ${direction > 0 ? 'up' : 'down'}`,
      group: 'Numbers',
    })),
  ),
  ...commandUses,
]

export const MIDI_OPTIONS: readonly UseOption<MidiUse>[] = [
  ...SURFACE_NUMBERS.map(({ id, label }) => ({
    use: { kind: 'number', id } as const,
    label,
    group: 'Numbers',
  })),
  ...SURFACE_NUMBERS.map(({ id, label }) => ({
    use: { kind: 'reset', id } as const,
    label: `reset ${label}`,
    group: 'Resets',
  })),
  ...commandUses,
]

export const CODING_OPTIONS: readonly { readonly id: MidiCoding; readonly label: string }[] = [
  { id: 'position', label: 'where it stands' },
  { id: 'twos-complement', label: 'steps, two’s complement' },
  { id: 'offset-binary', label: 'steps, offset binary' },
]

/** A use as the value of a list entry; equal uses give equal text. */
export const keyOfUse = (use: unknown): string =>
  typeof use === 'string' ? use : JSON.stringify(Object.entries(use as object).sort())
