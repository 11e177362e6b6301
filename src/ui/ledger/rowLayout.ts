import type { Cue } from '../../core/job/job.ts'
import { rampPart } from '../../core/job/valuesAt.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import {
  cueOfRow,
  type LedgerRows,
  rowHeight,
  rowsBetween,
  rowTop,
} from '../../store/ledgerRows.ts'

/** The head of the columns, with its edge. */
export const HEAD_HEIGHT = 29

/** Where the line across the strip rests, as a part of the height that the film has. */
const LINE_AT = 0.25

/** Leader before the first cue, so that the line rests in its place there too. */
export const leaderHeight = (viewHeight: number): number =>
  Math.round(Math.max(0, viewHeight - HEAD_HEIGHT) * LINE_AT)

/** Leader after the last cue. */
export const tailHeight = (viewHeight: number): number =>
  Math.max(0, viewHeight - HEAD_HEIGHT - leaderHeight(viewHeight))

/** How much of a row's numbers its height has room for. */
export type RowDetail = 'whole' | 'brief' | 'line' | 'thin'

export const detailOf = (height: number): RowDetail =>
  height >= 66 ? 'whole' : height >= 34 ? 'brief' : height >= 16 ? 'line' : 'thin'

/** What is drawn beyond the edges of the view, so that scrolling never shows a gap. */
const MARGIN = 200

/** Scroll positions are taken in steps of so many pixels: rows are not drawn anew for each. */
export const SCROLL_STEP = 128

/** Rows thinner than this are drawn only as often as there is room for this. */
const THINNEST = 3

/**
 * The rows to draw where the view begins at `top` of the list. Of rows too thin to be told apart
 * only some are drawn, and the one the line is on, so that there are never more than the view has
 * room for.
 */
export const rowsToDraw = (
  rows: LedgerRows,
  top: number,
  viewHeight: number,
  lineRow: number | undefined,
): readonly number[] => {
  const { from, to } = rowsBetween(rows, top - MARGIN, top + viewHeight + SCROLL_STEP + MARGIN)
  const drawn: number[] = []
  let drawnTo = -Infinity
  for (let row = from; row < to; row++) {
    const bottom = rowTop(rows, row + 1)
    const isTooThin = bottom < drawnTo + THINNEST && rowHeight(rows, row) < THINNEST
    if (isTooThin && row !== lineRow) continue
    drawnTo = bottom
    drawn.push(row)
  }
  return drawn
}

/** How the stills of a cue lie along its row: how many, and which of them are to be drawn. */
export type StillSlots = {
  readonly count: number
  readonly from: number
  readonly to: number
}

/** As many stills as fit whole under each other, at least one; drawn those near the view. */
export const stillSlots = (
  height: number,
  stillHeight: number,
  viewFrom: number,
  viewTo: number,
): StillSlots => {
  const count = Math.max(1, Math.floor(height / (stillHeight + 2)))
  const pitch = height / count
  const clampSlot = (slot: number) => Math.min(count, Math.max(0, slot))
  return {
    count,
    from: clampSlot(Math.floor((viewFrom - MARGIN) / pitch)),
    to: clampSlot(Math.ceil((viewTo + MARGIN) / pitch)),
  }
}

/**
 * The frame a still shows: the one in the middle of its stretch of the cue; where there is one still,
 * a third of the way in, past any ramp.
 */
export const slotFrame = (cue: Cue, end: Frame, slot: number, count: number): Frame => {
  const length = end - cue.first
  if (count > 1) return frame(cue.first + Math.floor(((slot + 0.5) * length) / count))
  const settled = Math.min(cue.first + cue.ramp, end - 1)
  return frame(Math.floor(settled + (end - settled) / 3))
}

/** Points of an eased slope. */
const SLOPE_STEPS = 16

/** A ramp as an SVG path: from the left (the cue before) to the right (this cue) as it goes down. */
export const rampPath = ({ rampShape }: Cue, width: number, height: number): string => {
  const steps = rampShape === 'linear' ? 1 : SLOPE_STEPS
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps
    return `${(rampPart(t, rampShape) * width).toFixed(1)} ${(t * height).toFixed(1)}`
  })
  return `M${points.join('L')}`
}

/** Whether a row is the first and the last of neighbouring rows with one scene mark. */
export const sceneEdges = (
  rows: LedgerRows,
  row: number,
): { readonly isFirst: boolean; readonly isLast: boolean } => {
  const scene = cueOfRow(rows, row)?.scene
  return {
    isFirst: cueOfRow(rows, row - 1)?.scene !== scene,
    isLast: cueOfRow(rows, row + 1)?.scene !== scene,
  }
}
