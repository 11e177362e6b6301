import type { Cue } from '../../core/job/job.ts'
import type { Frame } from '../../core/time/frame.ts'

/** Every row of the ledger is this high, in CSS pixels. */
export const ROW_HEIGHT = 78

/** Where the line across the strip rests, as a part of the ledger's height. */
const LINE_AT = 0.32

/** Rows drawn above and below the visible ones, so that scrolling never shows a gap. */
const MARGIN_ROWS = 4

/** The rows to draw for a scroll position. */
export const visibleRows = (
  scrollTop: number,
  viewHeight: number,
  count: number,
): { readonly from: number; readonly to: number } => ({
  from: Math.max(0, Math.floor(scrollTop / ROW_HEIGHT) - MARGIN_ROWS),
  to: Math.min(count, Math.ceil((scrollTop + viewHeight) / ROW_HEIGHT) + MARGIN_ROWS),
})

/** How far down the ledger a frame is: its cue's row, and the part of the cue gone by. */
export const frameOffset = (cue: Cue, index: number, end: Frame, frame: Frame): number =>
  (index + (frame - cue.first) / Math.max(1, end - cue.first)) * ROW_HEIGHT

/** The scroll position that brings an offset under the line. */
export const scrollForLine = (offset: number, viewHeight: number, count: number): number => {
  const furthest = Math.max(0, count * ROW_HEIGHT - viewHeight)
  return Math.min(furthest, Math.max(0, offset - viewHeight * LINE_AT))
}
