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
