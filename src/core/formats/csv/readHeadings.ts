import type { CsvRow } from '../../base/csv.ts'
import { type Problem, problem } from '../../base/problem.ts'
import { fail, ok, type Result, resultOf } from '../../base/result.ts'
import {
  CDL_COLUMNS,
  type CsvColumn,
  columnNamed,
  FRAMING_COLUMNS,
  GRADE_COLUMNS,
} from './csvColumns.ts'

type Tell = (problem: Problem) => void

/** Where each column is, by the headings; what is no column of a ledger is told. */
const placesOf = ({ line, cells }: CsvRow, tell: Tell): Result<ReadonlyMap<CsvColumn, number>> => {
  const places = new Map<CsvColumn, number>()
  const twice: Problem[] = []
  for (const [index, cell] of cells.entries()) {
    const heading = cell.trim().slice(0, 100)
    const column = columnNamed(heading)
    if (!column) {
      if (heading !== '')
        tell(
          problem('not-found', `The column “${heading}” is none of a ledger’s and was left out.`, {
            line,
            field: heading,
          }),
        )
    } else if (places.has(column))
      twice.push(
        problem('conflict', `Line ${line} has the column “${column}” twice; take one out.`, {
          line,
          field: column,
        }),
      )
    else places.set(column, index)
  }
  return resultOf(places, twice)
}

const notALedger = (heads: CsvRow): Problem =>
  problem(
    'unknown-format',
    `Line ${heads.line} names no column of a ledger, such as “timecode in” or “gain R”; give each column its heading.`,
    { line: heads.line },
  )

/**
 * The columns that can be taken: of a kind that belongs together, all or none. What is left out for
 * want of others is told.
 */
const wholeGroups = (
  places: ReadonlyMap<CsvColumn, number>,
  line: number,
  tell: Tell,
): ReadonlyMap<CsvColumn, number> => {
  const kept = new Map(places)
  const leaveOut = (columns: readonly CsvColumn[], words: string): void => {
    const there = columns.filter((column) => kept.has(column))
    const gone = columns.filter((column) => !kept.has(column))
    if (there.length === 0 || gone.length === 0) return
    for (const column of there) kept.delete(column)
    const names = gone.map((column) => `“${column}”`).join(', ')
    tell(
      problem('missing', `${words} left out: the list has no column ${names}.`, {
        line,
        field: gone[0] ?? '',
      }),
    )
  }
  leaveOut(GRADE_COLUMNS, 'Lift, gamma and gain were')
  leaveOut(CDL_COLUMNS, 'Slope, offset and power were')
  leaveOut(FRAMING_COLUMNS, 'Framing was')
  const grades = [GRADE_COLUMNS, CDL_COLUMNS].filter(([column]) => column && kept.has(column))
  if (grades.length > 0) leaveOut([...grades.flat(), 'saturation'], 'Grades were')
  else leaveOut(['lift R', 'saturation'], 'Saturation was')
  return kept
}

/**
 * Where each column of a ledger is, by its headings. Columns that are none of a ledger's, and those
 * that cannot be taken for want of others, are told. Refuses headings that name no column, or one
 * twice.
 */
export const readHeadings = (heads: CsvRow, tell: Tell): Result<ReadonlyMap<CsvColumn, number>> => {
  const places = placesOf(heads, tell)
  if (!places.ok) return places
  return places.value.size === 0
    ? fail(notALedger(heads))
    : ok(wholeGroups(places.value, heads.line, tell))
}
