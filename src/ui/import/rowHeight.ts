/** CSS pixels of a line of a row, and of what is around its lines. */
const LINE = 18
const AROUND = 9

/** Lines that every row has: what is above, and what is below of it. */
const LEAST_LINES = 2

/** Characters of a sentence that surely fit a line. */
const LINE_LENGTH = 50

/**
 * CSS pixels of a row: `lines` in its last cell, and its sentence after them, two lines of it at
 * most; the whole of it is told on hovering, and to screen readers.
 */
export const rowHeight = (lines: number, sentence: string): number => {
  const told = Math.min(2, Math.ceil(sentence.length / LINE_LENGTH))
  return AROUND + LINE * Math.max(LEAST_LINES, lines + told)
}
