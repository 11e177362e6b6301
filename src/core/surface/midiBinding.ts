import { type MidiControl, sameControl } from './midiMessage.ts'
import type { SurfaceNumberId } from './surfaceNumber.ts'

/**
 * What the values of a control mean: where it stands, or how many steps it was turned since its
 * last message, as a two's complement (1 is one on, 127 one back) or about 64 (offset binary). The
 * two forms of steps are common practice, no published source.
 */
export type MidiCoding = 'position' | 'twos-complement' | 'offset-binary'

/** What a control of a MIDI surface does. */
export type MidiUse =
  | { readonly kind: 'number'; readonly id: SurfaceNumberId }
  /** Puts a number back where it does nothing. */
  | { readonly kind: 'reset'; readonly id: SurfaceNumberId }
  | { readonly kind: 'command'; readonly id: string }

/** A control and what it does. */
export type MidiBinding = {
  readonly control: MidiControl
  readonly coding: MidiCoding
  readonly use: MidiUse
}

/** Steps turned, by the value of a relative control, −64…63. */
export const stepsOf = (raw: number, coding: Exclude<MidiCoding, 'position'>): number =>
  coding === 'offset-binary' ? raw - 64 : raw < 64 ? raw : raw - 128

/**
 * A binding as it is learnt from the first message of a control. A key cannot stand anywhere: given
 * a number, it resets it.
 */
export const learntBinding = (
  control: MidiControl,
  use: MidiUse,
  coding: MidiCoding,
): MidiBinding => {
  if (control.kind === 'change' && use.kind === 'number') return { control, coding, use }
  const isReset = control.kind === 'note' && use.kind === 'number'
  return { control, coding: 'position', use: isReset ? { kind: 'reset', id: use.id } : use }
}

/** The bindings with one more, which takes the place of what its control did before. */
export const withBinding = (
  bindings: readonly MidiBinding[],
  binding: MidiBinding,
): readonly MidiBinding[] => [...withoutControl(bindings, binding.control), binding]

export const withoutControl = (
  bindings: readonly MidiBinding[],
  control: MidiControl,
): readonly MidiBinding[] => bindings.filter((other) => !sameControl(other.control, control))
