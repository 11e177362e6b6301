import type { CsvRow } from '../../base/csv.ts'
import { type Problem, problem } from '../../base/problem.ts'
import type { CsvColumn } from './csvColumns.ts'

/** What is read of a row, by the columns its file has. */
export type CsvCells = {
  readonly line: number
  /** Without the spaces round it; '' where the column is not there or the cell is empty. */
  readonly cell: (column: CsvColumn) => string
  /** The cell as it stands. */
  readonly whole: (column: CsvColumn) => string | undefined
  /** Tells of a cell that cannot be read. */
  readonly refuse: (column: CsvColumn, code: Problem['code'], says: string) => undefined
  /**
   * A number of a column; undefined where it is empty or, which is told, cannot be read or is not
   * between `low` and `high`.
   */
  readonly number: (column: CsvColumn, low?: number, high?: number) => number | undefined
  /** The same, of a whole number. */
  readonly wholeNumber: (column: CsvColumn, high: number) => number | undefined
  /** All numbers of some columns; undefined where all are empty or, which is told, some are. */
  readonly numbers: (columns: readonly CsvColumn[]) => readonly number[] | undefined
}

const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u

const MOST_SHOWN = 60

/** What stands in a cell, cut where it is long. */
const shown = (text: string): string =>
  text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text

/** A row, read by the places of the columns its file has. */
export const csvCells = (
  row: CsvRow,
  places: ReadonlyMap<CsvColumn, number>,
  tell: (problem: Problem) => void,
): CsvCells => {
  const { line } = row
  const whole = (column: CsvColumn): string | undefined => row.cells[places.get(column) ?? -1]
  const cell = (column: CsvColumn): string => whole(column)?.trim() ?? ''
  const refuse = (column: CsvColumn, code: Problem['code'], says: string): undefined => {
    tell(problem(code, `Line ${line}, column “${column}”: ${says}`, { line, field: column }))
    return undefined
  }
  const number = (column: CsvColumn, low = -Infinity, high = Infinity): number | undefined => {
    const text = cell(column)
    if (text === '') return undefined
    if (!DECIMAL.test(text))
      return refuse(
        column,
        'malformed',
        `“${shown(text)}” is not a number; write one with a decimal point, as in 1.25.`,
      )
    const value = Number(text)
    if (!Number.isFinite(value) || value < low || value > high)
      return refuse(
        column,
        'out-of-range',
        Number.isFinite(low)
          ? `${shown(text)} does not lie from ${low} to ${high}.`
          : `${shown(text)} is too large.`,
      )
    // −0 is 0: no text tells them apart for sure.
    return value + 0
  }
  return {
    line,
    whole,
    cell,
    refuse,
    number,
    wholeNumber: (column, high) => {
      const value = number(column, 0, high)
      return value === undefined || Number.isInteger(value)
        ? value
        : refuse(column, 'malformed', `${value} is not a whole number; give one.`)
    },
    numbers: (columns) => {
      const missing = columns.filter((column) => cell(column) === '')
      if (missing.length === columns.length) return undefined
      for (const column of missing)
        refuse(
          column,
          'missing',
          'The cell is empty while others of its kind are not; fill it in, or empty them all.',
        )
      const values = columns.map((column) => number(column))
      return values.every((value) => value !== undefined) ? values : undefined
    },
  }
}
