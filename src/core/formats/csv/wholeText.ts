const HALVES = /\p{Surrogate}/gu

/** Whether every character of a text can be written as UTF-8. */
export const isWholeText = (text: string): boolean => text.search(HALVES) < 0

/** Text as UTF-8 holds it: halves of characters as U+FFFD. */
export const wholeText = (text: string): string => text.replace(HALVES, '\ufffd')
