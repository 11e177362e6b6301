/** The numbers of a grade as the ledger has them, and the same as ASC CDL v1.2 has them. */
export const GRADE_COLUMNS = [
  ...(['lift R', 'lift G', 'lift B', 'gamma R', 'gamma G', 'gamma B'] as const),
  ...(['gain R', 'gain G', 'gain B'] as const),
] as const

export const CDL_COLUMNS = [
  ...(['slope R', 'slope G', 'slope B', 'offset R', 'offset G', 'offset B'] as const),
  ...(['power R', 'power G', 'power B'] as const),
] as const

export const FRAMING_COLUMNS = ['zoom', 'pan', 'tilt', 'rotation', 'squeeze', 'blanking'] as const

/**
 * The columns of a ledger as comma-separated values, in their order. `last frame` belongs to the
 * cue; `timecode out`, as in an event line, is that of the first frame after it. `frames` and
 * `seconds` are its duration.
 */
export const CSV_COLUMNS = [
  'cue',
  'id',
  'first frame',
  'last frame',
  'timecode in',
  'timecode out',
  'footage',
  'frames',
  'seconds',
  'scene',
  'note',
  'boundary',
  'confidence',
  'ramp',
  'ramp shape',
  ...GRADE_COLUMNS,
  'saturation',
  ...CDL_COLUMNS,
  ...FRAMING_COLUMNS,
  'grade name',
  'alternates',
  'agreement',
] as const

export type CsvColumn = (typeof CSV_COLUMNS)[number]

const plain = (text: string): string => text.toLowerCase().replace(/[\s_-]+/gu, '')

const BY_NAME = new Map<string, CsvColumn>(CSV_COLUMNS.map((name) => [plain(name), name]))

/** The column a heading means, however it is spaced and spelt; undefined where it is not ours. */
export const columnNamed = (heading: string): CsvColumn | undefined => BY_NAME.get(plain(heading))
