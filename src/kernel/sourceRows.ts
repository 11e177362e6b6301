import type { Places } from './framingTables.ts'

/** Rows `first` up to `end`. */
export type RowRange = { readonly first: number; readonly end: number }

/** The scanned rows that delivered rows `first` up to `end` are read from. */
export const sourceRows = (
  { first, end }: RowRange,
  framedRows: Places | undefined,
  height: number,
): RowRange => {
  if (!framedRows) return { first, end }
  let low = height
  let high = -1
  for (let y = first; y < end; y++) {
    const before = framedRows.before[y] ?? -2
    if (before < -1) continue
    low = Math.min(low, Math.max(before, 0))
    high = Math.max(high, Math.min(before + 1, height - 1))
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
