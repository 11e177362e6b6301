import { type Problem, problem } from '../../base/problem.ts'
import { framesPerDay, parseTimecode } from '../../time/timecode.ts'
import type { ListTiming, Span } from '../decisionList.ts'
import type { CsvCells } from './csvCells.ts'
import type { CsvColumn } from './csvColumns.ts'

/** Where a row's cue is: by its labels, counted from 00:00:00:00, and by its frames of the reel. */
export type CsvPlace = {
  readonly from: number | undefined
  readonly to: number | undefined
  readonly frame: number | undefined
}

const FARTHEST = Number.MAX_SAFE_INTEGER

const countOf = (row: CsvCells, column: CsvColumn, timing: ListTiming): number | undefined => {
  const label = row.cell(column)
  if (label === '') return undefined
  const count = parseTimecode(label, timing.rate, timing.isDropFrame)
  return count.ok ? count.value : row.refuse(column, 'malformed', count.problems[0].says)
}

/**
 * Where the cue of a row begins and ends. Labels count where the list has them and `timing` tells
 * how they are counted; else frames of the reel, `frames` and `last frame` telling the end. A cue
 * that ends before it begins, other than over midnight, is refused.
 */
export const readCsvPlace = (row: CsvCells, timing: ListTiming | undefined): CsvPlace => {
  const frame = row.wholeNumber('first frame', FARTHEST)
  const last = row.wholeNumber('last frame', FARTHEST)
  const frames = row.wholeNumber('frames', FARTHEST)
  const labelled = timing ? countOf(row, 'timecode in', timing) : undefined
  const from = labelled ?? frame
  if (from === undefined) return { from, to: undefined, frame }
  if (labelled !== undefined && timing && row.cell('timecode out') !== '') {
    const out = countOf(row, 'timecode out', timing)
    const day = framesPerDay(timing.rate, timing.isDropFrame)
    const to = out !== undefined && out < from ? out + day : out
    if (to === from)
      row.refuse('timecode out', 'out-of-range', 'The cue has no frame; give it one.')
    return { from, to, frame }
  }
  if (frame !== undefined && last !== undefined) {
    if (last < frame)
      row.refuse('last frame', 'out-of-range', 'The cue ends before it begins; mend one of both.')
    return { from, to: from + last - frame + 1, frame }
  }
  if (frames === 0) row.refuse('frames', 'out-of-range', 'The cue has no frame; give it one.')
  return { from, to: frames === undefined ? undefined : from + frames, frame }
}

/**
 * The spans of rows: one without an end goes up to the next one's beginning, or is a frame long.
 */
export const spansOf = (places: readonly CsvPlace[]): readonly (Span | undefined)[] =>
  places.map(({ from, to }, index) => {
    if (from === undefined) return undefined
    const next = places[index + 1]?.from
    return { from, to: to ?? (next !== undefined && next > from ? next : from + 1) }
  })

/** Tells of rows whose frames and labels lie otherwise apart than those of the first row. */
export const tellShifted = (
  places: readonly CsvPlace[],
  lines: readonly number[],
  timing: ListTiming | undefined,
  tell: (problem: Problem) => void,
): void => {
  const day = timing ? framesPerDay(timing.rate, timing.isDropFrame) : Number.MAX_SAFE_INTEGER
  const shiftOf = ({ from, frame }: CsvPlace): number | undefined =>
    from === undefined || frame === undefined ? undefined : (((from - frame) % day) + day) % day
  const usual = places.map(shiftOf).find((shift) => shift !== undefined)
  for (const [index, place] of places.entries()) {
    const shift = shiftOf(place)
    const line = lines[index] ?? 1
    if (shift !== undefined && shift !== usual)
      tell(
        problem(
          'conflict',
          `Line ${line}, column “first frame”: its timecode says another frame than ${place.frame}; the timecode was taken.`,
          { line, field: 'first frame' },
        ),
      )
  }
}
