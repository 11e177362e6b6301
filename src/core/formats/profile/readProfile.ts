import { type CsvSeparator, parseCsv } from '../../base/csv.ts'
import { problem } from '../../base/problem.ts'
import { fail, ok, type Result } from '../../base/result.ts'
import type { NamedProfile } from '../../chart/measureChart.ts'

const MOST_ROWS = 100_000
const SEPARATORS: readonly CsvSeparator[] = [',', ';', '\t']
const NAMES: Readonly<Record<number, readonly string[]>> = {
  1: ['Level'],
  3: ['Red', 'Green', 'Blue'],
}

const numberOf = (cell: string | undefined): number =>
  cell === undefined || cell.trim() === '' ? Number.NaN : Number(cell)

/**
 * A line profile as comma-separated values: places in the first column, then one level, or red,
 * green and blue.
 * A first row of words names the unit of the places.
 */
export const readProfile = (text: string): Result<readonly NamedProfile[]> => {
  const [head = ''] = text.split('\n', 1)
  const separator = SEPARATORS.find((each) => head.includes(each)) ?? ','
  const parsed = parseCsv(text, MOST_ROWS, { separator, hasSeparatorLine: false })
  if (!parsed.ok) return parsed
  const [first, ...others] = parsed.value
  const hasNames = first?.cells.every((cell) => Number.isNaN(numberOf(cell))) ?? false
  const rows = hasNames ? others : parsed.value
  const channels = (rows[0]?.cells.length ?? 0) - 1
  const usual = NAMES[channels]
  if (!usual)
    return fail(
      problem(
        'malformed',
        'A profile has two columns (place, level) or four (place, red, green, blue).',
        { line: rows[0]?.line ?? 1 },
      ),
    )
  for (const { cells, line } of rows)
    if (cells.length !== channels + 1 || !cells.every((cell) => Number.isFinite(numberOf(cell))))
      return fail(
        problem('malformed', `Line ${line} is not ${channels + 1} numbers; mend it.`, { line }),
      )
  const column = (at: number) => rows.map(({ cells }) => numberOf(cells[at]))
  return ok(
    usual.map((name, i) => ({
      ...{ name, unit: (hasNames && first?.cells[0]?.trim()) || 'of the places' },
      ...{ x: column(0), y: column(i + 1) },
    })),
  )
}
