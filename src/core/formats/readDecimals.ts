import { parseDecimal } from './parseDecimal.ts'

/** Decimals read from a text, up to the first that is none. */
export type DecimalsRead = {
  readonly values: readonly number[]
  /** The first character of what is no finite decimal; undefined where all are. */
  readonly wrongAt: number | undefined
  /** The first character of what comes after as many as may be there. */
  readonly moreAt: number | undefined
}

/** Powers of ten that a double has exactly. */
const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`))

/** Digits of which any whole number is exact as a double. */
const EXACT_DIGITS = 15

const isSpace = (code: number): boolean => code === 32 || (code >= 9 && code <= 13)
const isDigit = (code: number): boolean => code >= 48 && code <= 57

/**
 * A plain decimal of at most 15 digits between two characters; NaN where it is anything else. With
 * whole number and power of ten both exact, one division rounds just once: the nearest double.
 */
const plainDecimal = (text: string, from: number, to: number): number => {
  const sign = text.charCodeAt(from)
  const first = sign === 45 || sign === 43 ? from + 1 : from
  let whole = 0
  let digits = 0
  let point = -1
  for (let i = first; i < to; i++) {
    const code = text.charCodeAt(i)
    if (isDigit(code)) {
      whole = whole * 10 + (code - 48)
      digits++
    } else if (code === 46 && point === -1) point = i
    else return Number.NaN
  }
  if (digits === 0 || digits > EXACT_DIGITS) return Number.NaN
  const value = point === -1 ? whole : whole / (TENS[to - 1 - point] ?? Number.NaN)
  return sign === 45 && value !== 0 ? -value : value
}

/**
 * White-space separated decimals, with exponents or without, each the nearest double and none −0.
 * Made for tables of a million numbers: a plain decimal is read without a string of its own.
 */
export const readDecimals = (text: string, most: number): DecimalsRead => {
  const values: number[] = []
  let from = 0
  for (;;) {
    while (from < text.length && isSpace(text.charCodeAt(from))) from++
    if (from === text.length) return { values, wrongAt: undefined, moreAt: undefined }
    if (values.length === most) return { values, wrongAt: undefined, moreAt: from }
    let to = from
    while (to < text.length && !isSpace(text.charCodeAt(to))) to++
    let value = plainDecimal(text, from, to)
    if (Number.isNaN(value)) {
      value = parseDecimal(text.slice(from, to))
      if (!Number.isFinite(value)) return { values, wrongAt: from, moreAt: undefined }
    }
    values.push(value)
    from = to
  }
}
