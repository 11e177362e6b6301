import { at } from '../base/assert.ts'
import { GLYPH_BITS, GLYPH_RUNS } from './glyphs.ts'

/** Pixels of a letter's cell. */
export const LETTER_WIDTH = 10
export const LETTER_HEIGHT = 20

/** Coverage, 0…255, row by row. */
export type Lettering = {
  readonly width: number
  readonly height: number
  readonly coverage: Uint8Array
}

const GLYPH_BYTES = (LETTER_WIDTH * LETTER_HEIGHT) / 8

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes of a base64 text (RFC 4648 §4) without white space. */
const bytesOfBase64 = (text: string): Uint8Array => {
  const bytes = new Uint8Array(Math.floor((text.replace(/=+$/u, '').length * 3) / 4))
  let held = 0
  let bits = 0
  let to = 0
  for (const digit of text) {
    if (digit === '=') break
    held = ((held << 6) | DIGITS.indexOf(digit)) & 0xffffff
    bits += 6
    if (bits >= 8) {
      bits -= 8
      bytes[to++] = (held >> bits) & 0xff
    }
  }
  return bytes
}

let glyphs: Uint8Array | undefined

/** Where the glyph of a character stands among all; undefined where the font has none. */
const glyphIndex = (code: number): number | undefined => {
  let before = 0
  for (const [first, last] of GLYPH_RUNS) {
    if (code >= first && code <= last) return before + code - first
    before += last - first + 1
  }
  return undefined
}

/** White square: stands for a character the font has not. */
const UNKNOWN = 0x25a1

/** The characters of a text as the font can show them: composed, without marks left over. */
const shownCharacters = (text: string): readonly number[] =>
  [...text.normalize('NFC').replace(/[\p{M}\p{C}]/gu, '')].map((character) => {
    const code = character.codePointAt(0) ?? UNKNOWN
    if (glyphIndex(code) !== undefined) return code
    const base = character.normalize('NFD').codePointAt(0) ?? UNKNOWN
    return glyphIndex(base) === undefined ? UNKNOWN : base
  })

/**
 * A line of text in the program's own bitmap letters, each pixel of a letter `down` pixels high and
 * `across` wide, which need not be whole. Latin, Greek and Cyrillic, left to right; what the font
 * has not is a box.
 */
export const letterLine = (text: string, across: number, down: number): Lettering => {
  glyphs ??= bytesOfBase64(GLYPH_BITS)
  const bits = glyphs
  const froms = shownCharacters(text).map((code) => (glyphIndex(code) ?? 0) * GLYPH_BYTES * 8)
  const columns = froms.length * LETTER_WIDTH
  const width = Math.round(columns * across)
  const height = LETTER_HEIGHT * down
  const coverage = new Uint8Array(width * height)
  const isInk = (column: number, row: number): boolean => {
    const from = at(froms, Math.floor(column / LETTER_WIDTH))
    const bit = from + row * LETTER_WIDTH + (column % LETTER_WIDTH)
    return ((at(bits, bit >> 3) >> (7 - (bit & 7))) & 1) === 1
  }
  for (let row = 0; row < LETTER_HEIGHT; row++) {
    const first = row * down * width
    for (let x = 0; x < width; x++) {
      const column = Math.min(columns - 1, Math.floor((x + 0.5) / across))
      if (isInk(column, row)) coverage[first + x] = 255
    }
    for (let y = 1; y < down; y++) coverage.copyWithin(first + y * width, first, first + width)
  }
  return { width, height, coverage }
}
