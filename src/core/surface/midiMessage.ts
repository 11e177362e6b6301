/** A control of a MIDI surface: what its messages have in common. */
export type MidiControl = {
  readonly kind: 'change' | 'note' | 'bend'
  /** 1…16. */
  readonly channel: number
  /** Of the control change or the note, 0…127; 0 for pitch bend. */
  readonly number: number
}

/** One message of a control. */
export type MidiEvent = {
  readonly control: MidiControl
  /** As it was sent: 0…127, 14 bits for pitch bend; 0 for a note let go. */
  readonly raw: number
  /** Where the control stands, 0…1; the middle (64 of 127, 8192 of 16383) is exactly 0.5. */
  readonly position: number
}

/**
 * Both halves of the travel are even in themselves, as in the min-centre-max scaling of MIDI 2.0
 * (M2-115-U), so that a control that clicks into its middle gives the middle.
 */
const positionOf = (raw: number, bits: 7 | 14): number => {
  const middle = 2 ** (bits - 1)
  return raw <= middle ? raw / (2 * middle) : 0.5 + (raw - middle) / (2 * (middle - 1))
}

/**
 * Reads a MIDI message of one to three bytes; undefined where it is not of a control. MIDI 1.0
 * Detailed Specification (4.2), tables I and II: 8nH note off, 9nH note on (velocity 0 is off),
 * BnH control change below 120 (from there on they are channel modes), EnH pitch bend, low bits
 * first.
 */
export const readMidi = (bytes: ArrayLike<number>): MidiEvent | undefined => {
  const [status = 0, first = 0, second = 0] = Array.from(bytes)
  if (bytes.length < 3 || first > 127 || second > 127) return undefined
  const channel = (status & 0x0f) + 1
  const event = (kind: MidiControl['kind'], number: number, raw: number, bits: 7 | 14) => ({
    control: { kind, channel, number },
    raw,
    position: positionOf(raw, bits),
  })
  switch (status & 0xf0) {
    case 0x80:
      return event('note', first, 0, 7)
    case 0x90:
      return event('note', first, second, 7)
    case 0xb0:
      return first < 120 ? event('change', first, second, 7) : undefined
    case 0xe0:
      return event('bend', 0, first + 128 * second, 14)
    default:
      return undefined
  }
}

export const sameControl = (a: MidiControl, b: MidiControl): boolean =>
  a.kind === b.kind && a.channel === b.channel && a.number === b.number

/** A control in words. */
export const controlName = ({ kind, channel, number }: MidiControl): string =>
  kind === 'bend'
    ? `pitch bend, channel ${channel}`
    : `${kind === 'note' ? 'note' : 'control change'} ${number}, channel ${channel}`
