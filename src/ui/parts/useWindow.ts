import { type RefObject, useMemo, useState } from 'react'
import { useElementSize } from './useElementSize.ts'

/** Scroll positions are taken in steps of so many pixels: rows are not drawn anew for each. */
const STEP = 128

/** What is drawn beyond the edges of the view, so that scrolling shows no gap. */
const MARGIN = 256

/** The rows of a long list that are in view, and the room that those before and after take. */
export type Window = {
  readonly from: number
  readonly to: number
  readonly before: number
  readonly after: number
  readonly onScroll: () => void
}

/** The first row that ends past `y`. */
const rowAt = (ends: Float64Array, y: number): number => {
  let low = 0
  let high = ends.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((ends[middle] ?? 0) <= y) low = middle + 1
    else high = middle
  }
  return low
}

/** Draws of many rows only those in view. Heights are in CSS pixels, one a row, and must hold. */
export const useWindow = <Row>(
  scroller: RefObject<HTMLElement | null>,
  rows: readonly Row[],
  heightOf: (row: Row) => number,
): Window => {
  const { height } = useElementSize(scroller)
  const [scrolled, setScrolled] = useState(0)
  const ends = useMemo(() => {
    const sums = new Float64Array(rows.length)
    let sum = 0
    rows.forEach((row, i) => {
      sum += heightOf(row)
      sums[i] = sum
    })
    return sums
  }, [rows, heightOf])
  const total = ends.at(-1) ?? 0
  // Another, shorter list may be scrolled less far.
  const top = Math.min(scrolled, Math.max(0, total - height))
  const from = rowAt(ends, top - MARGIN)
  const to = Math.min(rows.length, rowAt(ends, top + height + STEP + MARGIN) + 1)
  return {
    from,
    to,
    before: from === 0 ? 0 : (ends[from - 1] ?? 0),
    after: total - (to === 0 ? 0 : (ends[to - 1] ?? 0)),
    onScroll: () => setScrolled(Math.floor((scroller.current?.scrollTop ?? 0) / STEP) * STEP),
  }
}
