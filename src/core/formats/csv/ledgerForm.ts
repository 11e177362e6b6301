import type { CsvForm, CsvSeparator } from '../../base/csv.ts'
import { columnNamed } from './csvColumns.ts'

/** How a ledger is laid out, and how many of its headings are ours: 0 where it is no ledger. */
export type LedgerForm = CsvForm & { readonly named: number }

/** Spreadsheets part cells by semicolons where a comma is the decimal mark (common practice). */
const OTHER_SEPARATORS: readonly CsvSeparator[] = [';', '\t']

/** A first line that only names the separator, for spreadsheets (common practice, no source). */
const SEPARATOR_LINE = /^\u{feff}?"?sep=[,;\t]"?(?:\r\n|\r|\n)/iu

/** The first line with anything on it but separators: the row of headings. */
const HEADING_LINE = /[^\s,;"\u{feff}][^\r\n]*/u

/** Characters of the heading line that are looked at: a ledger's own come to under a thousand. */
const LOOKED_AT = 100_000

/**
 * How a ledger's cells are parted, told by its heading line: by commas where this names any column
 * of ours, else by semicolons or tabs, whichever names more.
 */
export const ledgerForm = (text: string): LedgerForm => {
  const hasSeparatorLine = SEPARATOR_LINE.test(text)
  const body = hasSeparatorLine ? text.replace(SEPARATOR_LINE, '') : text
  const heading = HEADING_LINE.exec(body)?.[0].slice(0, LOOKED_AT).replaceAll('"', '') ?? ''
  const formOf = (separator: CsvSeparator): LedgerForm => ({
    separator,
    hasSeparatorLine,
    named: heading.split(separator).filter((cell) => columnNamed(cell) !== undefined).length,
  })
  const byCommas = formOf(',')
  if (byCommas.named > 0) return byCommas
  return OTHER_SEPARATORS.map(formOf).reduce(
    (best, each) => (each.named > best.named ? each : best),
    byCommas,
  )
}
