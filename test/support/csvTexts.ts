import { parseCsv } from '../../src/core/base/csv.ts'

const cellIn = (cell: string, separator: ';' | '\t', mark: string): string => {
  if (/^[+-]?\d*\.\d+$/u.test(cell)) return cell.replace('.', mark)
  return new RegExp(`["\\r\\n${separator}]`, 'u').test(cell)
    ? `"${cell.replaceAll('"', '""')}"`
    : cell
}

/**
 * A ledger of ours as a spreadsheet saves it in much of Europe: semicolons or tabs between cells,
 * decimal commas, and quotes only where a cell holds a separator, a quote or a line break.
 */
export const partedBy = (ledger: string, separator: ';' | '\t', mark = ','): string => {
  const parsed = parseCsv(ledger, 1_000_000)
  if (!parsed.ok) throw new Error(parsed.problems[0].says)
  return parsed.value
    .map(({ cells }) => cells.map((cell) => cellIn(cell, separator, mark)).join(separator))
    .map((row) => `${row}\r\n`)
    .join('')
}
