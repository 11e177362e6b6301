import type { Rate } from '../time/rate.ts'

export const ELEMENTS = ['unknown', 'print', 'intermediate', 'negative', 'reversal'] as const
export const COLOURINGS = ['unknown', 'colour', 'black-and-white', 'tinted'] as const
export const SUPPORTS = ['unknown', 'nitrate', 'acetate', 'polyester'] as const
export const TRACKS = ['unknown', 'mute', 'optical', 'magnetic', 'separate'] as const
export const DEGREES = ['unknown', 'none', 'slight', 'marked', 'severe'] as const
export const MARK_KINDS = ['note', 'sync', 'splice', 'damage'] as const

/** How bad something is, as whoever inspects the film sees it. */
export type Degree = (typeof DEGREES)[number]

/** Something on the film that is told with its frame. */
export type FilmMark = {
  readonly frame: number
  readonly kind: (typeof MARK_KINDS)[number]
  readonly says: string
}

/** What is in the can, as it was found on the bench: nothing here decides a picture. */
export type Particulars = {
  readonly element: (typeof ELEMENTS)[number]
  readonly colouring: (typeof COLOURINGS)[number]
  /** What the emulsion lies on, which the trade calls the base as well. */
  readonly support: (typeof SUPPORTS)[number]
  /** Part by which it has shrunk, 0 to 0.2; null: not measured. */
  readonly shrinkage: number | null
  readonly vinegar: Degree
  readonly perforations: Degree
  readonly fading: Degree
  readonly mould: Degree
  /** Splices counted; null: not counted. */
  readonly splices: number | null
  readonly sound: (typeof TRACKS)[number]
  /** Frames by which sound runs ahead of its picture, measured on this film; null: not measured. */
  readonly soundAhead: number | null
  /** Frames a second it was made for; null: not known. */
  readonly speed: Rate | null
  /** Width over height of the picture as it is to be shown; null: not known. */
  readonly aspect: number | null
  readonly leader: string
  readonly edgeNumbers: string
  readonly notes: string
  /** By frame, the first first. */
  readonly marks: readonly FilmMark[]
}

/** Nothing is known of it yet. */
export const NO_PARTICULARS: Particulars = {
  ...{ element: 'unknown', colouring: 'unknown', support: 'unknown', shrinkage: null },
  ...{ vinegar: 'unknown', perforations: 'unknown', fading: 'unknown', mould: 'unknown' },
  ...{ splices: null, sound: 'unknown', soundAhead: null, speed: null, aspect: null },
  ...{ leader: '', edgeNumbers: '', notes: '', marks: [] },
}

/** Particulars with another mark in its place by frame. */
export const withMark = (before: Particulars, mark: FilmMark): Particulars => ({
  ...before,
  marks: [...before.marks, mark].toSorted((a, b) => a.frame - b.frame),
})

export const withoutMark = (before: Particulars, at: number): Particulars => ({
  ...before,
  marks: before.marks.filter((_, index) => index !== at),
})
