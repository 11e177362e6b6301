/** What a hand-over format is called, and what it holds. */
export type FormatFacts = {
  readonly title: string
  readonly what: string
  readonly extension: string
  readonly mediaType: string
  /** Whether each cue is a file of its own. */
  readonly isFileACue?: boolean
}

/** The lists a reel is handed over as, in the order they are offered. */
export const HAND_OVER_FORMATS = {
  ccc: {
    title: 'Grades as ASC CDL',
    what: 'An ASC CDL v1.2 collection: slope, offset, power and saturation of every cue.',
    extension: 'ccc',
    mediaType: 'application/xml',
  },
  cdl: {
    title: 'Decisions as ASC CDL',
    what: 'An ASC CDL v1.2 decision list: the same numbers, each beside the name of the picture it is for.',
    extension: 'cdl',
    mediaType: 'application/xml',
  },
  cc: {
    title: 'Single grades as ASC CDL',
    what: 'An ASC CDL v1.2 correction a cue, each a file of its own.',
    extension: 'cc',
    mediaType: 'application/xml',
    isFileACue: true,
  },
  edl: {
    title: 'Edit decision list',
    what: 'Conventional event lines: where every cue begins and ends, its grade in ASC_SOP and ASC_SAT comments.',
    extension: 'edl',
    mediaType: 'text/plain',
  },
  otio: {
    title: 'OpenTimelineIO',
    what: 'A timeline with a clip a cue on the scan: grades as ASC CDL in its metadata, and everything else of the cues beside them.',
    extension: 'otio',
    mediaType: 'application/json',
  },
  csv: {
    title: 'The ledger as CSV',
    what: 'Comma-separated values for a spreadsheet: a row a cue with its places, words and every number.',
    extension: 'csv',
    mediaType: 'text/csv',
  },
  clf: {
    title: 'Base and grade as Common LUT Format',
    what: 'A process list a cue, each a file of its own: the whole chain from the scan’s signal to graded video.',
    extension: 'clf',
    mediaType: 'application/xml',
    isFileACue: true,
  },
} as const satisfies Readonly<Record<string, FormatFacts>>

export type HandOverFormat = keyof typeof HAND_OVER_FORMATS
