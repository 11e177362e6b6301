/**
 * What makes a spreadsheet take a cell for a formula: OWASP's advice on CSV injection (ASVS 5.0
 * §1.2.10: = + - @, tab and NUL), with line breaks and the full-width forms.
 */
const FORMULA = /^'*[=+\-@\t\r\n\0＝＋－＠]/u

/**
 * Text as a cell that no spreadsheet runs: with an apostrophe before what begins like a formula.
 * Apostrophes that stand before such a beginning count with it, so that the way back is exact.
 */
export const guardText = (text: string): string => (FORMULA.test(text) ? `'${text}` : text)

/** The inverse of `guardText`. */
export const unguardText = (cell: string): string =>
  cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell
