import { NUMBERS, PLACE } from './gradeVector.ts'

/** Numbers of a grade that move together, by the same amount: their places in its vector. */
export type Move = readonly number[]

const all = (term: 'lift' | 'gamma' | 'gain'): Move => [0, 1, 2].map((c) => PLACE[term] + c)
const each = (term: 'lift' | 'gamma' | 'gain'): readonly Move[] =>
  [0, 1, 2].map((c) => [PLACE[term] + c])
const SATURATION: Move = [PLACE.saturation]

/** The triples, each moved as one. */
export const TRIPLES: readonly Move[] = [all('lift'), all('gamma'), all('gain')]

/** Every number by itself. */
export const ALL_MOVES: readonly Move[] = Array.from({ length: NUMBERS }, (_, place) => [place])

/** Sets of moves that hold all the simple ones between them. */
export const WIDE_SETS: readonly (readonly Move[])[] = [
  [all('lift'), all('gamma'), all('gain'), SATURATION],
  [...each('lift'), ...each('gain'), SATURATION],
  [...each('gamma'), ...each('gain'), SATURATION],
]

/**
 * What a colourist would try, from one turn of one control on: sets of moves, simple ones first. A
 * triple moved as one is one move (the *all* view).
 */
export const SIMPLE_SETS: readonly (readonly Move[])[] = [
  [SATURATION],
  [all('gain')],
  [all('lift')],
  [all('gamma')],
  ...each('gain').map((move) => [move]),
  ...each('lift').map((move) => [move]),
  [all('lift'), all('gain')],
  [all('gain'), SATURATION],
  [all('lift'), SATURATION],
  [all('gamma'), all('gain')],
  [all('lift'), all('gamma')],
  [all('gamma'), SATURATION],
  [all('lift'), all('gain'), SATURATION],
  [all('lift'), all('gamma'), all('gain')],
  [all('gamma'), all('gain'), SATURATION],
  [all('lift'), all('gamma'), SATURATION],
  each('gain'),
  each('lift'),
  [...each('gain'), SATURATION],
  [...each('lift'), SATURATION],
  [...each('lift'), ...each('gain')],
  [...each('gamma'), ...each('gain')],
]

/** Whether everything that `moves` can do can be done by those of `wide`. */
export const isWithin = (moves: readonly Move[], wide: readonly Move[]): boolean =>
  moves.every((move) => {
    const parts = wide.filter((part) => part.every((place) => move.includes(place)))
    return parts.reduce((sum, part) => sum + part.length, 0) === move.length
  })
