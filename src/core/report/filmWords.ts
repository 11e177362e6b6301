import type { Degree, FilmMark, Particulars } from '../film/particulars.ts'

/** Words for what is chosen of the particulars of a film, on screen and in reports alike. */
export const FILM_WORDS: {
  readonly element: Readonly<Record<Particulars['element'], string>>
  readonly colouring: Readonly<Record<Particulars['colouring'], string>>
  readonly support: Readonly<Record<Particulars['support'], string>>
  readonly sound: Readonly<Record<Particulars['sound'], string>>
  readonly degree: Readonly<Record<Degree, string>>
  readonly mark: Readonly<Record<FilmMark['kind'], string>>
} = {
  element: {
    unknown: 'not known',
    print: 'print',
    intermediate: 'intermediate',
    negative: 'negative',
    reversal: 'reversal',
  },
  colouring: {
    unknown: 'not known',
    colour: 'colour',
    'black-and-white': 'black and white',
    tinted: 'tinted or toned',
  },
  support: {
    unknown: 'not known',
    nitrate: 'nitrate',
    acetate: 'acetate (safety)',
    polyester: 'polyester',
  },
  sound: {
    unknown: 'not known',
    mute: 'mute',
    optical: 'optical track',
    magnetic: 'magnetic stripe',
    separate: 'separate magnetic',
  },
  degree: {
    unknown: 'not looked at',
    none: 'none',
    slight: 'slight',
    marked: 'marked',
    severe: 'severe',
  },
  mark: { note: 'note', sync: 'sync mark', splice: 'splice', damage: 'damage' },
}
