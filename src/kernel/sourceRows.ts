import { OUTSIDE, type Taps } from './framingTables.ts'

/** Rows `first` up to `end`. */
export type RowRange = { readonly first: number; readonly end: number }

/** The scanned rows that delivered rows `first` up to `end` are read from. */
export const sourceRows = (
  { first, end }: RowRange,
  framedRows: Taps | undefined,
  height: number,
): RowRange => {
  if (!framedRows) return { first, end }
  let low = height
  let high = -1
  for (let y = first; y < end; y++) {
    const top = framedRows.firsts[y] ?? OUTSIDE
    if (top === OUTSIDE) continue
    low = Math.min(low, top)
    high = Math.max(high, Math.min(top + framedRows.taps, height) - 1)
  }
  return low > high ? { first: 0, end: 0 } : { first: low, end: high + 1 }
}

/** The rows of half-height chroma that rows `first` up to `end` of the picture are made from. */
export const chromaRowsOf = ({ first, end }: RowRange, count: number): RowRange => ({
  first: Math.max((first >> 1) - 1, 0),
  end: Math.min(((end - 1) >> 1) + 2, count),
})

/** `height` rows in bands of at most `size`. */
export const bandsOf = (height: number, size: number): readonly RowRange[] =>
  Array.from({ length: Math.ceil(height / size) }, (_, i) => ({
    first: i * size,
    end: Math.min((i + 1) * size, height),
  }))
