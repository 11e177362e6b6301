// Makes src/core/lettering/glyphs.ts of the bitmap font 10x20 of X11's misc-misc fonts, in the
// public domain (its COPYRIGHT property is checked below): Debian's xfonts-base,
// usr/share/fonts/X11/misc/10x20.pcf.gz, given as the one argument.
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { gunzipSync } from 'node:zlib'

const WIDTH = 10
const HEIGHT = 20

/** Latin, Greek, Cyrillic, punctuation, arrows, a few signs. */
const WANTED = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x218, 0x21b],
  [0x386, 0x3ce],
  [0x400, 0x45f],
  [0x490, 0x491],
  [0x1e80, 0x1e85],
  [0x2010, 0x2026],
  [0x2032, 0x2033],
  [0x203a, 0x203a],
  [0x20ac, 0x20ac],
  [0x2116, 0x2116],
  [0x2190, 0x2193],
  [0x2212, 0x2212],
  [0x221a, 0x221a],
  [0x2248, 0x2248],
  [0x2260, 0x2265],
  [0x25a1, 0x25a1],
]

/** Kinds of table in a PCF file, and the bits of how one is laid out. */
const PROPERTIES = 1
const METRICS = 4
const BITMAPS = 8
const ENCODINGS = 32
const COMPRESSED = 0x100
const BIG = 4
const MOST_LEFT_FIRST = 8

const file = gunzipSync(readFileSync(process.argv[2] ?? ''))
const tables = new Map()
for (let i = 0; i < file.readUInt32LE(4); i++) {
  const at = 8 + 16 * i
  tables.set(file.readUInt32LE(at), file.readUInt32LE(at + 12))
}

const reader = (kind) => {
  let at = tables.get(kind)
  const format = file.readUInt32LE(at)
  at += 4
  const isBig = (format & BIG) !== 0
  const take = (bytes, read) => {
    const value = read(at)
    at += bytes
    return value
  }
  return {
    format,
    u8: () => take(1, (p) => file.readUInt8(p)),
    i16: () => take(2, (p) => (isBig ? file.readInt16BE(p) : file.readInt16LE(p))),
    i32: () => take(4, (p) => (isBig ? file.readInt32BE(p) : file.readInt32LE(p))),
    at: () => at,
    skip: (bytes) => {
      at += bytes
    },
  }
}

const copyright = () => {
  const table = reader(PROPERTIES)
  const properties = Array.from({ length: table.i32() }, () => ({
    name: table.i32(),
    isText: table.u8() === 1,
    value: table.i32(),
  }))
  table.skip(properties.length % 4 === 0 ? 0 : 4 - (properties.length % 4))
  table.i32()
  const texts = table.at()
  const text = (offset) => {
    const end = file.indexOf(0, texts + offset)
    return file.toString('latin1', texts + offset, end)
  }
  return properties
    .filter(({ name, isText }) => isText && text(name) === 'COPYRIGHT')
    .map(({ value }) => text(value))[0]
}
if (!/public domain/iu.test(copyright() ?? '')) throw new Error(`Not free: ${copyright()}`)

const metrics = (() => {
  const table = reader(METRICS)
  const isShort = (table.format & COMPRESSED) !== 0
  const one = isShort ? () => table.u8() - 0x80 : () => table.i16()
  return Array.from({ length: isShort ? table.i16() & 0xffff : table.i32() }, () => {
    const [left, right, width, ascent, descent] = [one(), one(), one(), one(), one()]
    if (!isShort) table.i16()
    return { left, right, width, ascent, descent }
  })
})()

const bitmaps = (() => {
  const table = reader(BITMAPS)
  const offsets = Array.from({ length: table.i32() }, () => table.i32())
  for (let i = 0; i < 4; i++) table.i32()
  const isLeftFirst = (table.format & MOST_LEFT_FIRST) !== 0
  const unit = 1 << ((table.format >> 4) & 3)
  const pad = 1 << (table.format & 3)
  const isBig = (table.format & BIG) !== 0
  const bits = table.at()
  return (glyph, row, x) => {
    const { left, right } = metrics[glyph]
    const pitch = Math.ceil((right - left) / 8 / pad) * pad
    const byte = x >> 3
    const swapped = isBig === isLeftFirst ? byte : byte - (byte % unit) + (unit - 1 - (byte % unit))
    const value = file[bits + offsets[glyph] + row * pitch + swapped]
    return (value >> (isLeftFirst ? 7 - (x & 7) : x & 7)) & 1
  }
})()

const encodings = (() => {
  const table = reader(ENCODINGS)
  const [minLow, maxLow, minHigh, maxHigh] = [table.i16(), table.i16(), table.i16(), table.i16()]
  table.i16()
  const glyphs = new Map()
  for (let high = minHigh; high <= maxHigh; high++)
    for (let low = minLow; low <= maxLow; low++) {
      const glyph = table.i16() & 0xffff
      if (glyph !== 0xffff) glyphs.set((high << 8) | low, glyph)
    }
  return glyphs
})()

const ASCENT = 16
const bytesOf = (glyph) => {
  const bytes = Buffer.alloc((WIDTH * HEIGHT) / 8)
  const { left, right, ascent, descent } = metrics[glyph]
  for (let row = 0; row < ascent + descent; row++)
    for (let x = 0; x < right - left; x++) {
      const at = (ASCENT - ascent + row) * WIDTH + left + x
      if (bitmaps(glyph, row, x)) bytes[at >> 3] |= 0x80 >> (at & 7)
    }
  return bytes
}

const codes = WANTED.flatMap(([from, to]) =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i),
).filter((code) => encodings.has(code))
const runs = []
for (const code of codes) {
  const last = runs.at(-1)
  if (last && last[1] === code - 1) last[1] = code
  else runs.push([code, code])
}
const data = Buffer.concat(codes.map((code) => bytesOf(encodings.get(code)))).toString('base64')
const hex = (code) => `0x${code.toString(16)}`
writeFileSync(
  resolve(import.meta.dirname, '../src/core/lettering/glyphs.ts'),
  `// Made by samples/make-lettering.mjs; see there for where it is from. Public domain.

/** Characters that have a glyph: runs of code points, first and last. */
export const GLYPH_RUNS: readonly (readonly [first: number, last: number])[] = [
${runs.map(([from, to]) => `  [${hex(from)}, ${hex(to)}],`).join('\n')}
]

/** Pixels of every glyph, ${WIDTH}×${HEIGHT}, a bit each, row by row, 25 bytes a glyph, as base64. */
export const GLYPH_BITS =
${data
  .match(/.{1,2000}/gu)
  .map((line) => `  '${line}'`)
  .join(' +\n')}
`,
)
process.stdout.write(`${codes.length} glyphs\n`)
