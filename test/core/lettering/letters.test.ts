import { expect, test } from 'vitest'
import { type Lettering, letterLine } from '../../../src/core/lettering/letters.ts'

const drawn = ({ width, height, coverage }: Lettering): string[] =>
  Array.from({ length: height }, (_, y) =>
    Array.from(coverage.subarray(y * width, (y + 1) * width), (c) => (c > 0 ? '#' : '.')).join(''),
  )

test('a letter is the glyph of its font', () => {
  // Glyph "1" of the font 10x20 (BDF of X11's misc-misc), read off by eye.
  expect(drawn(letterLine('1', 1, 1)).slice(3, 16)).toEqual([
    '....##....',
    '...###....',
    '..####....',
    '.##.##....',
    '....##....',
    '....##....',
    '....##....',
    '....##....',
    '....##....',
    '....##....',
    '....##....',
    '....##....',
    '.########.',
  ])
})

test('pixels of a letter are as large as is asked for', () => {
  const small = letterLine('Ab', 1, 1)
  const large = letterLine('Ab', 3, 2)
  expect([large.width, large.height]).toEqual([3 * small.width, 2 * small.height])
  const once = drawn(small)
  expect(drawn(large).map((row) => row.replace(/(.)\1\1/gu, '$1'))).toEqual(
    once.flatMap((row) => [row, row]),
  )
})

test('composed, Greek and Cyrillic letters are there; marks that cannot be composed are dropped', () => {
  const box = drawn(letterLine('漢', 1, 1))
  for (const letter of ['é', 'ž', 'Ω', 'Ж', '€', '−'])
    expect(drawn(letterLine(letter, 1, 1))).not.toEqual(box)
  expect(drawn(letterLine('e\u0301', 1, 1))).toEqual(drawn(letterLine('é', 1, 1)))
  expect(drawn(letterLine('q\u0301', 1, 1))).toEqual(drawn(letterLine('q', 1, 1)))
  expect(drawn(letterLine('ạ', 1, 1))).toEqual(drawn(letterLine('a', 1, 1)))
  expect(letterLine('a\u0007b', 1, 1).width).toBe(20)
})

test('letters take any width, by whole pixels of the picture', () => {
  const plain = letterLine('Ab', 1, 2)
  const wide = letterLine('Ab', 1.5, 2)
  expect([wide.width, wide.height]).toEqual([30, 40])
  expect(drawn(letterLine('Ab', 0.7, 1))[0]?.length).toBe(14)
  const ink = ({ coverage }: Lettering) => coverage.filter((c) => c > 0).length
  expect(ink(wide) / ink(plain)).toBeCloseTo(1.5, 0)
})
