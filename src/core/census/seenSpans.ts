import { type Framing, framingMap } from '../picture/framing.ts'

/** Columns `first` up to `end` of a row. */
export type Span = { readonly first: number; readonly end: number }

const NOTHING: Span = { first: 0, end: 0 }

/** The samples of an axis that delivered samples are read from: see `framePicture`. */
const seenOf = (size: number, scale: number, offset: number): Span => {
  let first = size
  let end = 0
  for (let i = 0; i < size; i++) {
    const place = i * scale + offset
    if (place < -0.5 || place > size - 0.5) continue
    const before = Math.floor(place)
    first = Math.min(first, Math.max(before, 0))
    end = Math.max(end, Math.min(before + 1, size - 1) + 1)
  }
  return first < end ? { first, end } : NOTHING
}

/**
 * The scanned pixels, row by row, that a delivered picture is made from. Each delivered level is a
 * mean of theirs, so that none is outside while all of theirs are inside.
 */
export const seenSpans = (framing: Framing, width: number, height: number): readonly Span[] => {
  const { scale, offsetX, offsetY } = framingMap(framing, width, height)
  const columns = seenOf(width, scale, offsetX)
  const rows = seenOf(height, scale, offsetY)
  return Array.from({ length: height }, (_, y) =>
    y >= rows.first && y < rows.end ? columns : NOTHING,
  )
}
