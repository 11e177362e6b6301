/** What a hand-over format is called, and what it holds. */
export type FormatFacts = {
  readonly title: string
  readonly what: string
  readonly extension: string
  readonly mediaType: string
}

/** The lists a reel is handed over as, in the order they are offered. */
export const HAND_OVER_FORMATS = {
  ccc: {
    title: 'Grades as ASC CDL',
    what: 'An ASC CDL v1.2 collection: slope, offset, power and saturation of every cue.',
    extension: 'ccc',
    mediaType: 'application/xml',
  },
  edl: {
    title: 'Edit decision list',
    what: 'Conventional event lines: where every cue begins and ends, its grade in ASC_SOP and ASC_SAT comments.',
    extension: 'edl',
    mediaType: 'text/plain',
  },
} as const satisfies Readonly<Record<string, FormatFacts>>

export type HandOverFormat = keyof typeof HAND_OVER_FORMATS
