import { type Problem, problem } from './problem.ts'
import { fail, ok, type Result } from './result.ts'

/** A row of cells, and the line of the file it begins on, from 1. */
export type CsvRow = { readonly line: number; readonly cells: readonly string[] }

/** What stands between cells. */
export type CsvSeparator = ',' | ';' | '\t'

/** How a file of separated values is laid out. */
export type CsvForm = {
  readonly separator: CsvSeparator
  /** Whether its first line only names the separator; it is then no row. */
  readonly hasSeparatorLine: boolean
}

const RFC_4180: CsvForm = { separator: ',', hasSeparatorLine: false }

/** What a file of comma-separated values may hold at most. */
const MOST_CHARACTERS = 2 ** 28
const MOST_CELLS = 20_000_000

const needsQuotes = (cell: string): boolean => /[",\r\n]|^\s|\s$/u.test(cell)

const quoted = (cell: string): string =>
  needsQuotes(cell) ? `"${cell.replaceAll('"', '""')}"` : cell

/** Rows as comma-separated values (RFC 4180): CR LF after each, quotes where they are needed. */
export const formatCsv = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('')

/** Where the text of a quoted cell ends: the place of its last quote; −1 where it never does. */
const closingQuote = (text: string, from: number): number => {
  let at = text.indexOf('"', from)
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2)
  return at
}

const linesIn = (text: string): number => (text.match(/\r\n|\r|\n/gu) ?? []).length

/** Where reading is: the next character, and its line from 1. */
type Scan = { at: number; line: number; readonly separator: CsvSeparator }

const malformed = (line: number, says: string): Problem =>
  problem('malformed', `Line ${line} has ${says}.`, { line })

const REMEDY = 'put the whole cell in quotes, doubling those in it'

/** The cell that the quote at `scan` opens. */
const readQuoted = (text: string, scan: Scan): string | Problem => {
  const { at, line } = scan
  const end = closingQuote(text, at + 1)
  if (end < 0) return malformed(line, 'a quote that is never closed; close it')
  const inside = text.slice(at + 1, end)
  scan.line += linesIn(inside)
  scan.at = end + 1
  return scan.at < text.length && !`${scan.separator}\r\n`.includes(text[scan.at] ?? '')
    ? malformed(scan.line, `text after a closing quote; ${REMEDY}`)
    : inside.replaceAll('""', '"')
}

/** What ends a cell without quotes. */
const PLAIN_END: Readonly<Record<CsvSeparator, RegExp>> = {
  ',': /[",\r\n]/gu,
  ';': /[";\r\n]/gu,
  '\t': /["\t\r\n]/gu,
}

/** The cell without quotes at `scan`. */
const readPlain = (text: string, scan: Scan): string | Problem => {
  const { at, line } = scan
  const plainEnd = PLAIN_END[scan.separator]
  plainEnd.lastIndex = at
  const end = plainEnd.exec(text)?.index ?? text.length
  scan.at = end
  return text[end] === '"'
    ? malformed(line, `a quote inside a cell; ${REMEDY}`)
    : text.slice(at, end)
}

const passLineEnd = (text: string, scan: Scan): void => {
  scan.at += text.startsWith('\r\n', scan.at) ? 2 : 1
  scan.line++
}

const passLine = (text: string, scan: Scan): void => {
  while (scan.at < text.length && !'\r\n'.includes(text[scan.at] ?? '')) scan.at++
  passLineEnd(text, scan)
}

/** The cells of the row at `scan`, and past the end of its line. */
const readRow = (text: string, scan: Scan): readonly string[] | Problem => {
  const cells: string[] = []
  for (;;) {
    const cell = text[scan.at] === '"' ? readQuoted(text, scan) : readPlain(text, scan)
    if (typeof cell !== 'string') return cell
    cells.push(cell)
    if (text[scan.at] !== scan.separator) break
    scan.at++
  }
  passLineEnd(text, scan)
  return cells
}

/**
 * Comma-separated values (RFC 4180) → rows with their lines; by `form`, the same parted by another
 * character. Lines end in CR LF, LF or CR; quoted cells may hold separators, quotes (doubled) and
 * line breaks; empty lines are passed over. A byte order mark in front is taken off. Refuses, with its line, a quote that is not closed, text after
 * a closing quote, a quote inside an unquoted cell, and more than `mostRows` rows.
 */
export const parseCsv = (
  text: string,
  mostRows: number,
  { separator, hasSeparatorLine }: CsvForm = RFC_4180,
): Result<readonly CsvRow[]> => {
  if (text.length > MOST_CHARACTERS)
    return fail(problem('too-large', 'The file is too large for a list; split it.', { line: 1 }))
  const rows: CsvRow[] = []
  const scan: Scan = { at: text.startsWith('\ufeff') ? 1 : 0, line: 1, separator }
  if (hasSeparatorLine) passLine(text, scan)
  let held = 0
  while (scan.at < text.length) {
    const { line } = scan
    const cells = readRow(text, scan)
    if ('says' in cells) return fail(cells)
    held += cells.length
    if (cells.length > 1 || cells[0] !== '') rows.push({ line, cells })
    if (rows.length > mostRows || held > MOST_CELLS)
      return fail(
        problem('too-large', `The list has more than ${mostRows} rows, or too many cells.`, {
          line,
        }),
      )
  }
  return ok(rows)
}
