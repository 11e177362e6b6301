import type { Control, ReadingAim } from './adjustment.ts'

/** What a scanner's light comes from, as far as it decides what is lined up and what to beware of. */
export type ScannerKind = 'tube' | 'sensor'

/** A sheet of controls and readings to begin from; everything on it can be changed. */
export type LineUpSheet = {
  readonly id: string
  readonly title: string
  readonly kind: ScannerKind | undefined
  readonly controls: readonly Control[]
  readonly readings: readonly ReadingAim[]
  /** Where its numbers are from. */
  readonly source: string
}

const control = (name: string, unit: string, low: number, high: number): Control => ({
  ...{ id: name, name, unit, low, high },
})

/** A reading that may lie so far to each side of what it aims at. */
const reading = (name: string, unit: string, aim: number, within: number): ReadingAim => ({
  ...{ id: name, name, unit, aim, low: aim - within, high: aim + within },
})

const PRACTICE =
  'Common practice, no published source: open gate at 95 % of 0.7 V on green, red and blue differences nulled; beam current 150 µA for positive film, up to 250 µA for negative and small gauges, never above. How far readings may lie from that is ours.'

/** 95 % of 0.7 V, in mV. */
const OPEN_GATE = 665

const BALANCE = [
  reading('Green, open gate', 'mV', OPEN_GATE, 7),
  reading('Red less green', 'mV', 0, 3),
  reading('Blue less green', 'mV', 0, 3),
] as const

const gains = (names: readonly string[]) =>
  names.map((name) => control(`${name} gain`, '%', 0, 100))

export const LINE_UP_SHEETS: readonly LineUpSheet[] = [
  {
    id: 'tube',
    title: 'Open gate, flying-spot tube',
    kind: 'tube',
    controls: [control('Beam current', 'µA', 0, 250), ...gains(['Red', 'Blue'])],
    readings: BALANCE,
    source: PRACTICE,
  },
  {
    id: 'sensor',
    title: 'Open gate, sensor with lamp or LED',
    kind: 'sensor',
    controls: [control('Light', '%', 0, 100), ...gains(['Red', 'Blue'])],
    readings: BALANCE,
    source: PRACTICE,
  },
  {
    id: 'own',
    title: 'A sheet of your own',
    kind: undefined,
    controls: [control('Control 1', '', 0, 100)],
    readings: [reading('Reading 1', '', 0, 1)],
    source: 'Yours.',
  },
]

const ALWAYS =
  'The maker’s manual, the house’s rules and local codes come first; what is said here does not replace them. Moving parts catch fingers, hair and film; solvents want air and gloves.'

/** What to beware of, by kind of scanner: the usual cautions of the trade. */
export const LINE_UP_CAUTIONS: Readonly<Record<ScannerKind | 'any', readonly string[]>> = {
  any: [
    ALWAYS,
    'Nitrate film burns of itself and cannot be put out: it is for those who are licensed to handle it, and not for this machine unless it was made for it.',
  ],
  tube: [
    'A tube runs at about 25 kV: only those who are licensed work inside. Tube voltage above the maker’s gives X-rays.',
    'A bright spot that stands still burns the phosphor: lower the beam before the scan stops. The beam current is never set above its hard limit.',
  ],
  sensor: [
    'Lamps and LEDs are hot and bright enough to hurt: let them cool, and do not look into them.',
  ],
}
