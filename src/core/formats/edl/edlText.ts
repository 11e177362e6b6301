/** Text as a list of 7-bit ASCII lines can carry it: one line, accents dropped, the rest as `?`. */
export const edlText = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[‘’]/gu, "'")
    .replace(/[“”]/gu, '"')
    .replace(/[–—−]/gu, '-')
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/[^\u0020-\u007e]/gu, '?')

/** The same of a text of several lines, without empty ones at its ends. */
export const edlLinesOf = (text: string): string =>
  text
    .split(/\r\n|[\n\r\u2028\u2029]/u)
    .map(edlText)
    .join('\n')
    .trim()

/** Columns of a line of our own (common practice, no published source); ASC_SOP may need more. */
export const LINE_LIMIT = 80

/** A text cut to what is left of a line. */
export const cutTo = (text: string, length: number): string => text.slice(0, length).trimEnd()
