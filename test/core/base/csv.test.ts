import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatCsv, parseCsv } from '../../../src/core/base/csv.ts'

const cells = (text: string) => {
  const read = parseCsv(text, 100)
  return read.ok ? read.value.map((row) => row.cells) : read.problems
}

describe('comma-separated values', () => {
  // RFC 4180 §2: the examples of its rules 1, 2, 5, 6 and 7.
  it('are read by the rules of RFC 4180', () => {
    expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toHaveLength(2)
    expect(cells('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx'))
    expect(cells('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
    expect(cells('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']])
  })

  it('keep empty cells, and pass over empty lines and a byte order mark', () => {
    expect(cells('\ufeffa,,\n\n,b,""\r\r')).toEqual([
      ['a', '', ''],
      ['', 'b', ''],
    ])
  })

  it('tell the line that each row begins on', () => {
    const read = parseCsv('a\r\n"b\nb\rb",1\nc,2\r"d"', 100)
    expect(read.ok && read.value.map(({ line }) => line)).toEqual([1, 2, 5, 6])
  })

  it.each([
    ['a,b\n"c,d\n', 2, 'never closed'],
    ['a\n"b"c,d\n', 2, 'after a closing quote'],
    ['"a\nb" \n', 2, 'after a closing quote'],
    ['a\nb"c\n', 2, 'inside a cell'],
    ['a\nb\nc\nd\n', 4, 'more than 3 rows'],
  ])('refuse what is broken, by its line: %j', (text, line, says) => {
    const read = parseCsv(text, 3)
    expect(read).toMatchObject({ ok: false, problems: [{ at: { line } }] })
    expect(!read.ok && read.problems[0].says).toContain(says)
  })

  it('come back as they were written, whatever is in them', () => {
    const cell = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('"', '""', ',', '\r', '\n', '\r\n', ' a ', '\ufeff', ''),
    )
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { maxLength: 6 }),
        (rows) => {
          fc.pre(!rows[0]?.[0]?.startsWith('\ufeff'))
          expect(cells(formatCsv(rows))).toEqual(rows)
        },
      ),
      { seed: 1, numRuns: 500 },
    )
  })
})
