/** Characters of a decimal: the longest exact one of a double has 1,077 (2 to the power −1074). */
export const MOST_DECIMAL_CHARACTERS = 2000

// No two quantifiers side by side take the same characters, so that a long word is tried once.
const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/u

/**
 * A decimal with a point, with an exponent or without, as the nearest double and never −0; infinite
 * past the largest double, NaN where it is no decimal or longer than any need be.
 */
export const parseDecimal = (text: string): number =>
  text.length <= MOST_DECIMAL_CHARACTERS && DECIMAL.test(text) ? Number(text) + 0 : Number.NaN
