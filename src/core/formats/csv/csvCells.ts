import type { CsvRow } from '../../base/csv.ts'
import { type Problem, problem } from '../../base/problem.ts'
import { MOST_DECIMAL_CHARACTERS, parseDecimal } from '../parseDecimal.ts'
import type { CsvColumn } from './csvColumns.ts'
import type { CsvDecimals } from './csvDecimals.ts'

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

const MOST_SHOWN = 60

/** What stands in a cell, cut where it is long. */
const shown = (text: string): string =>
  text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text

/** Why a cell is no number; what follows “is not a number; ”. */
const remedy = (text: string, { mark, isGroupable }: CsvDecimals): string => {
  if (!isGroupable) return 'write one with a decimal point, as in 1.25.'
  return mark === ',' && text.includes('.')
    ? 'others here have a decimal comma, so write it with no other mark, as in 1,25 or 1250.'
    : 'write one with no mark but that of its decimals, as in 1,25 or 1250.'
}

/** A row, read by the places of the columns its file has and by how its numbers are written. */
export const csvCells = (
  row: CsvRow,
  places: ReadonlyMap<CsvColumn, number>,
  decimals: CsvDecimals,
  tell: (problem: Problem) => void,
): CsvCells => {
  const { line } = row
  const whole = (column: CsvColumn): string | undefined => row.cells[places.get(column) ?? -1]
  const cell = (column: CsvColumn): string => whole(column)?.trim() ?? ''
  const refuse = (column: CsvColumn, code: Problem['code'], says: string): undefined => {
    tell(problem(code, `Line ${line}, column “${column}”: ${says}`, { line, field: column }))
    return undefined
  }
  const numberIn = (text: string): number => {
    if (decimals.mark === '.') return parseDecimal(text)
    return text.includes('.') ? Number.NaN : parseDecimal(text.replace(',', '.'))
  }
  const number = (column: CsvColumn, low = -Infinity, high = Infinity): number | undefined => {
    const text = cell(column)
    if (text === '') return undefined
    if (text.length > MOST_DECIMAL_CHARACTERS)
      return refuse(
        column,
        'too-large',
        `It has ${text.length} characters; a number has at most ${MOST_DECIMAL_CHARACTERS}, so shorten it.`,
      )
    const value = numberIn(text)
    if (Number.isNaN(value))
      return refuse(
        column,
        'malformed',
        `“${shown(text)}” is not a number; ${remedy(text, decimals)}`,
      )
    if (!Number.isFinite(value) || value < low || value > high)
      return refuse(
        column,
        'out-of-range',
        Number.isFinite(low)
          ? `${shown(text)} does not lie from ${low} to ${high}.`
          : `${shown(text)} is too large.`,
      )
    return value
  }
  return {
    line,
    whole,
    cell,
    refuse,
    number,
    wholeNumber: (column, high) => {
      const text = cell(column)
      // 12.000 may be twelve thousand or twelve.
      if (decimals.isGroupable && /[.,]/u.test(text))
        return refuse(
          column,
          'malformed',
          `“${shown(text)}” is not a plain whole number; write it without marks, as in 1250.`,
        )
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
