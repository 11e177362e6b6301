import type { Triple } from '../../colour/triple.ts'

/** A place in a text that is read from left to right. */
type Cursor = { readonly text: string; at: number }

const isDigit = (code: number): boolean => code >= 48 && code <= 57

/** With so many digits whole numbers and powers of ten are exact, and so is their quotient. */
const MOST_DIGITS = 15
const POWERS_OF_TEN = Array.from({ length: MOST_DIGITS + 1 }, (_, n) => Number(`1e${n}`))

const EXPONENT = /^[eE][+-]?\d+/u

/** The decimal at the cursor, which moves behind it; NaN where there is none. */
const takeDecimal = (cursor: Cursor): number => {
  const { text } = cursor
  const from = cursor.at
  let at = from
  const sign = text[at]
  if (sign === '-' || sign === '+') at++
  let whole = 0
  let digits = 0
  let decimals = 0
  let hasPoint = false
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at)
    if (isDigit(code)) {
      whole = whole * 10 + code - 48
      digits++
      if (hasPoint) decimals++
    } else if (code === 46 && !hasPoint) hasPoint = true
    else break
  }
  if (digits === 0) return Number.NaN
  const isExponent = text[at] === 'e' || text[at] === 'E'
  if (isExponent) at += EXPONENT.exec(text.slice(at, at + 8))?.[0].length ?? 0
  cursor.at = at
  if (isExponent || digits > MOST_DIGITS) return Number(text.slice(from, at))
  const value = whole / (POWERS_OF_TEN[decimals] ?? Number.NaN)
  return sign === '-' ? -value : value
}

/** Moves over blanks, and one comma among them; tells whether there were any. */
const passOver = (cursor: Cursor): boolean => {
  const { text, at } = cursor
  let hasComma = false
  for (; cursor.at < text.length; cursor.at++) {
    const code = text.charCodeAt(cursor.at)
    if (code === 44 && !hasComma) hasComma = true
    else if (code !== 32 && code !== 9) break
  }
  return cursor.at > at
}

/** Three decimals in parentheses, parted by blanks or commas. */
const takeTriple = (cursor: Cursor): Triple | undefined => {
  if (cursor.text[cursor.at] !== '(') return undefined
  cursor.at++
  passOver(cursor)
  const r = takeDecimal(cursor)
  if (!passOver(cursor)) return undefined
  const g = takeDecimal(cursor)
  if (!passOver(cursor)) return undefined
  const b = takeDecimal(cursor)
  passOver(cursor)
  if (cursor.text[cursor.at] !== ')') return undefined
  cursor.at++
  passOver(cursor)
  return Number.isNaN(r) || Number.isNaN(g) || Number.isNaN(b) ? undefined : [r, g, b]
}

export type Sop = { readonly slope: Triple; readonly offset: Triple; readonly power: Triple }

/**
 * The numbers of an ASC_SOP comment from `at` on (facts/asc-cdl.md §5): three groups of three in
 * parentheses, with or without blanks and commas between. Undefined where they are not that.
 */
export const readSop = (text: string, at: number): Sop | undefined => {
  const cursor = { text, at }
  passOver(cursor)
  const slope = takeTriple(cursor)
  const offset = slope && takeTriple(cursor)
  const power = offset && takeTriple(cursor)
  return power && cursor.at === text.length ? { slope, offset, power } : undefined
}

/** The one number of an ASC_SAT comment from `at` on; undefined where it is not that. */
export const readSat = (text: string, at: number): number | undefined => {
  const cursor = { text, at }
  passOver(cursor)
  const saturation = takeDecimal(cursor)
  passOver(cursor)
  return Number.isNaN(saturation) || cursor.at !== text.length ? undefined : saturation
}
