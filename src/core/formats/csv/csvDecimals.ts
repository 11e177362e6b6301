import type { CsvRow, CsvSeparator } from '../../base/csv.ts'
import { CDL_COLUMNS, type CsvColumn, FRAMING_COLUMNS, GRADE_COLUMNS } from './csvColumns.ts'

/** How the numbers of a ledger are written: one decimal mark for all of it. */
export type CsvDecimals = {
  readonly mark: '.' | ','
  /** Whether a mark may as well part thousands, as in spreadsheets of many countries. */
  readonly isGroupable: boolean
}

const DECIMAL_COLUMNS: readonly CsvColumn[] = [
  'confidence',
  ...GRADE_COLUMNS,
  'saturation',
  ...CDL_COLUMNS,
  ...FRAMING_COLUMNS,
]

const WITH_COMMA = /^[+-]?\d*,\d*(?:[eE][+-]?\d+)?$/u

/**
 * How the numbers of rows are written: with points where cells are parted by commas; else with
 * commas where any number has one.
 */
export const csvDecimals = (
  rows: readonly CsvRow[],
  places: ReadonlyMap<CsvColumn, number>,
  separator: CsvSeparator,
): CsvDecimals => {
  if (separator === ',') return { mark: '.', isGroupable: false }
  const columns = DECIMAL_COLUMNS.flatMap((column) => places.get(column) ?? [])
  const hasComma = rows.some(({ cells }) =>
    columns.some((place) => WITH_COMMA.test(cells[place]?.trim() ?? '')),
  )
  return { mark: hasComma ? ',' : '.', isGroupable: true }
}
