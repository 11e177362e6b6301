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

const TUBE_PRACTICE =
  'Common practice, no published source: 150 µA for positive film, up to 250 µA for negative and small gauges and never above; tube voltage about 25 kV. The maker’s manual comes first.'

const OURS = 'Limits of our own, to be changed to the house’s.'

const COLOURS = ['Red', 'Green', 'Blue'] as const
const CORRECTORS = ['short', 'middle', 'long'] as const

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
    id: 'tube-positive',
    title: 'Tube: beam and voltage, positive film',
    kind: 'tube',
    controls: [control('Beam control', '%', 0, 100), control('Voltage control', '%', 0, 100)],
    readings: [
      { ...reading('Beam current', 'µA', 150, 10), high: 160 },
      reading('Tube voltage', 'kV', 25, 0.5),
    ],
    source: TUBE_PRACTICE,
  },
  {
    id: 'tube-negative',
    title: 'Tube: beam and voltage, negative and small gauges',
    kind: 'tube',
    controls: [control('Beam control', '%', 0, 100), control('Voltage control', '%', 0, 100)],
    readings: [
      { ...reading('Beam current', 'µA', 200, 50), low: 150, high: 250 },
      reading('Tube voltage', 'kV', 25, 0.5),
    ],
    source: TUBE_PRACTICE,
  },
  {
    id: 'black',
    title: 'Black level',
    kind: undefined,
    controls: COLOURS.map((name) => control(`${name} lift`, '%', -20, 20)),
    readings: COLOURS.map((name) => reading(`${name}, gate closed`, 'mV', 0, 3)),
    source: OURS,
  },
  {
    id: 'focus',
    title: 'Focus, by fine lines',
    kind: undefined,
    controls: [control('Focus', '', 0, 100)],
    readings: ['middle', 'left', 'right'].map((place) => ({
      ...reading(`Fine lines, ${place}`, '%', 95, 5),
      ...{ low: 80, high: 110 },
    })),
    source: `${OURS} Of lines from black to peak white, as the chart is measured.`,
  },
  {
    id: 'geometry',
    title: 'Geometry, standing and running',
    kind: undefined,
    controls: [
      ...['Height', 'Width'].map((name) => control(name, '%', 0, 100)),
      ...['Position across', 'Position down'].map((name) => control(name, '%', -50, 50)),
    ],
    readings: ['standing', 'running'].flatMap((how) => [
      reading(`Height, ${how}`, '%', 100, 0.5),
      reading(`Width, ${how}`, '%', 100, 0.5),
      reading(`Across, ${how}`, '%', 0, 0.5),
      reading(`Down, ${how}`, '%', 0, 0.5),
    ]),
    source: `${OURS} In parts of the aperture that is scanned.`,
  },
  {
    id: 'afterglow',
    title: 'Afterglow correctors',
    kind: 'tube',
    controls: COLOURS.flatMap((name) =>
      CORRECTORS.map((each) => control(`${name}, ${each} corrector`, '%', 0, 100)),
    ),
    readings: COLOURS.flatMap((name) =>
      CORRECTORS.map((each) => reading(`${name} streak, ${each}`, '%', 0, 0.5)),
    ),
    source: `${OURS} In parts of the step from white to black, near the edge, farther and far from it.`,
  },
  {
    id: 'sound',
    title: 'Sound level and response',
    kind: undefined,
    controls: [control('Level', 'dB', -20, 20), control('Treble', 'dB', -12, 12)],
    readings: [reading('1 kHz', 'dB', 0, 1), reading('5 kHz less 1 kHz', 'dB', 0, 3)],
    source:
      'Optical sound near zero level: common practice, no published source. How far readings may lie from that is ours.',
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

/** Where dust and wear sit in a film path: common practice, no published source. */
export const CLEANING_POINTS: readonly string[] = [
  'gate and skids',
  'rollers',
  'sprockets or capstan',
  'lens and aperture',
  'tacky cleaning rollers',
  'sound head',
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
