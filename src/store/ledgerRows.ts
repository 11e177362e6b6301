import { cueEnd, cueIndexAt } from '../core/job/cueList.ts'
import type { Cue, Reel } from '../core/job/job.ts'
import { type Frame, frame } from '../core/time/frame.ts'
import { framesPerSecond } from '../core/time/rate.ts'
import { CHANGED, DOUBTFUL, NOT_AGREED, OUTSIDE, UNLOOKED } from './cueBits.ts'
import type { CueFilter, LedgerView } from './ledgerView.ts'
import { cuesOf, currentCue, reelOf } from './queries.ts'
import { standingOf } from './standing.ts'
import type { AppState } from './state.ts'

/** Every row is this high where the ledger shows cues evenly, in CSS pixels. */
export const ROW_HEIGHT = 78

/** The list never gets higher than browsers can lay out: a longer reel is drawn shorter. */
const MOST_HEIGHT = 8_000_000

/** The rows of the ledger: which cues it lists, and where each of them is. */
export type LedgerRows = {
  readonly cues: readonly Cue[]
  readonly reelFrames: number
  /** Places of the listed cues among the reel's, ascending; undefined while all are listed. */
  readonly listed: Uint32Array | undefined
  readonly count: number
  /** Frames of the rows before each row, one more at the end; undefined where rows are even. */
  readonly starts: Float64Array | undefined
  /** CSS pixels to a frame, where rows are as long as their shots. */
  readonly pixelsPerFrame: number
  /** Of all rows, in CSS pixels. */
  readonly height: number
}

/** Bits that a filter asks for; 0 asks for nothing. */
const FILTER_BITS: Readonly<Record<CueFilter, number>> = {
  all: 0,
  'not-agreed': NOT_AGREED,
  outside: OUTSIDE,
  'not-looked-at': UNLOOKED,
  doubtful: DOUBTFUL,
  'changed-since': CHANGED,
}

/** The place among the reel's cues of the cue on a row. */
export const cuePlace = ({ listed }: LedgerRows, row: number): number => listed?.[row] ?? row

export const cueOfRow = (rows: LedgerRows, row: number): Cue | undefined =>
  row < 0 || row >= rows.count ? undefined : rows.cues[cuePlace(rows, row)]

/** The first row whose cue is at `place` or after it. */
const rowFrom = ({ listed, count }: LedgerRows, place: number): number => {
  if (!listed) return Math.min(place, count)
  let low = 0
  let high = count
  while (low < high) {
    const middle = (low + high) >> 1
    if ((listed[middle] ?? Infinity) < place) low = middle + 1
    else high = middle
  }
  return low
}

/** The row of the cue at a place of the reel; undefined where it is not listed. */
export const rowOfPlace = (rows: LedgerRows, place: number): number | undefined => {
  const row = rowFrom(rows, place)
  return row < rows.count && cuePlace(rows, row) === place ? row : undefined
}

/** Whether a cue has a row. */
export const isListed = (rows: LedgerRows, cue: Cue): boolean => {
  const place = cueIndexAt(rows.cues, cue.first)
  return rows.cues[place]?.id === cue.id && rowOfPlace(rows, place) !== undefined
}

export const rowTop = ({ starts, pixelsPerFrame }: LedgerRows, row: number): number =>
  starts ? (starts[row] ?? 0) * pixelsPerFrame : row * ROW_HEIGHT

export const rowHeight = (rows: LedgerRows, row: number): number =>
  rowTop(rows, row + 1) - rowTop(rows, row)

export const rowEnd = ({ cues, reelFrames }: LedgerRows, place: number): Frame =>
  cueEnd(cues, place, reelFrames)

/** The row that an offset from the top of the first falls on, the nearest where none does. */
export const rowAtOffset = ({ starts, count, pixelsPerFrame }: LedgerRows, y: number): number => {
  const last = Math.max(0, count - 1)
  if (!starts) return Math.min(last, Math.max(0, Math.floor(y / ROW_HEIGHT)))
  const wanted = y / pixelsPerFrame
  let low = 0
  let high = count
  while (low < high) {
    const middle = (low + high) >> 1
    if ((starts[middle] ?? Infinity) <= wanted) low = middle + 1
    else high = middle
  }
  return Math.min(last, Math.max(0, low - 1))
}

/** Rows `from` up to `to` that a stretch of the list touches. */
export const rowsBetween = (
  rows: LedgerRows,
  top: number,
  bottom: number,
): { readonly from: number; readonly to: number } =>
  rows.count === 0
    ? { from: 0, to: 0 }
    : { from: rowAtOffset(rows, top), to: rowAtOffset(rows, bottom) + 1 }

/**
 * How far down the list a frame is: its cue's row and the part of the cue gone by, or between the
 * rows where its cue is not listed.
 */
export const offsetOfFrame = (rows: LedgerRows, at: Frame): number => {
  const place = Math.max(0, cueIndexAt(rows.cues, at))
  const row = rowOfPlace(rows, place)
  if (row === undefined) return rowTop(rows, rowFrom(rows, place))
  const first = rows.cues[place]?.first ?? 0
  const part = (at - first) / Math.max(1, rowEnd(rows, place) - first)
  return rowTop(rows, row) + part * rowHeight(rows, row)
}

/** The frame at an offset down the list: the inverse of `offsetOfFrame`. */
export const frameAtOffset = (rows: LedgerRows, y: number): Frame => {
  const row = rowAtOffset(rows, y)
  const cue = cueOfRow(rows, row)
  if (!cue) return frame(0)
  const length = rowEnd(rows, cuePlace(rows, row)) - cue.first
  const part = (y - rowTop(rows, row)) / Math.max(rowHeight(rows, row), Number.MIN_VALUE)
  // A hair on, so that the exact offset of a frame is that frame and not the one before.
  const gone = Math.floor(part * length + 1e-6)
  return frame(cue.first + Math.min(length - 1, Math.max(0, gone)))
}

/** The listed cue before (−1) or after (1) the one that a frame belongs to. */
export const listedBeside = (rows: LedgerRows, at: Frame, direction: 1 | -1): Cue | undefined => {
  const place = Math.max(0, cueIndexAt(rows.cues, at))
  const row = rowFrom(rows, place)
  const isOnRow = rowOfPlace(rows, place) !== undefined
  return cueOfRow(rows, direction > 0 && !isOnRow ? row : row + direction)
}

const isSameBits = (a: Uint8Array, b: Uint8Array, wanted: number): boolean => {
  if (a === b) return true
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (((a[i] ?? 0) ^ (b[i] ?? 0)) & wanted) return false
  return true
}

const startsOf = (
  cues: readonly Cue[],
  listed: Uint32Array | undefined,
  reel: Reel,
): Float64Array => {
  const count = listed?.length ?? cues.length
  const starts = new Float64Array(count + 1)
  for (let row = 0; row < count; row++) {
    const place = listed?.[row] ?? row
    const length = cueEnd(cues, place, reel.frames) - (cues[place]?.first ?? 0)
    starts[row + 1] = (starts[row] ?? 0) + length
  }
  return starts
}

const rowsOf = (
  cues: readonly Cue[],
  reel: Reel,
  ledger: LedgerView,
  listed: Uint32Array | undefined,
): LedgerRows => {
  const count = listed?.length ?? cues.length
  const starts = ledger.timing === 'true' ? startsOf(cues, listed, reel) : undefined
  const frames = Math.max(1, starts?.[count] ?? 1)
  const pixelsPerFrame = Math.min(
    ledger.pixelsPerSecond / framesPerSecond(reel.rate),
    MOST_HEIGHT / frames,
  )
  const height = starts ? (starts[count] ?? 0) * pixelsPerFrame : count * ROW_HEIGHT
  return { cues, reelFrames: reel.frames, listed, count, starts, pixelsPerFrame, height }
}

/** The places of the cues with one of the bits wanted, and of the one that stays. */
const sift = (bits: Uint8Array, wanted: number, staying: number): Uint32Array => {
  const listed: number[] = []
  for (let i = 0; i < bits.length; i++) if (i === staying || (bits[i] ?? 0) & wanted) listed.push(i)
  return Uint32Array.from(listed)
}

const NO_BITS = new Uint8Array(0)

type Listed = {
  readonly reel: Reel
  readonly ledger: LedgerView
  readonly bits: Uint8Array
  readonly current: Cue['id'] | undefined
  readonly rows: LedgerRows
}

let last: Listed | undefined

/**
 * The rows of the ledger; worked out anew only when what they depend on has changed. A cue that
 * was listed when the line came to it stays as long as the line is on it, so that a list of cues
 * outside tolerance does not jump while one of them is brought inside.
 */
export const ledgerRowsOf = (state: AppState): LedgerRows | undefined => {
  const reel = reelOf(state)
  if (!reel) return undefined
  const { ledger } = state
  const cues = cuesOf(state)
  const wanted = FILTER_BITS[ledger.filter]
  const bits = wanted === 0 ? NO_BITS : standingOf(state).bits
  const cue = wanted === 0 ? undefined : currentCue(state)
  if (
    last?.reel === reel &&
    last.ledger === ledger &&
    last.rows.cues === cues &&
    last.current === cue?.id &&
    isSameBits(last.bits, bits, wanted)
  )
    return last.rows
  const place = cue ? cueIndexAt(cues, cue.first) : -1
  const before =
    last?.reel.id === reel.id && last.ledger.filter === ledger.filter ? last.rows : undefined
  const staysListed = cue !== undefined && before !== undefined && isListed(before, cue)
  const listed = wanted === 0 ? undefined : sift(bits, wanted, staysListed ? place : -1)
  const rows = rowsOf(cues, reel, ledger, listed)
  last = { reel, ledger, bits, current: cue?.id, rows }
  return rows
}
