import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exactDecimal } from '../../../src/core/formats/decimal.ts'
import { readDecimals } from '../../../src/core/formats/readDecimals.ts'

describe('decimals', () => {
  it('read back exactly and have no exponent', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = exactDecimal(value)
        expect(text).toMatch(/^-?\d+(\.\d+)?$/u)
        expect(Number(text)).toBe(value === 0 ? 0 : value)
      }),
      { seed: 2, numRuns: 2000 },
    )
  })
})

describe('decimals read', () => {
  const written = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
    fc.double({ noNaN: true, noDefaultInfinity: true }).map(exactDecimal),
    fc.double({ min: -5000, max: 5000, noNaN: true }).map((value) => value.toFixed(6)),
    fc.double({ min: -1, max: 1, noNaN: true }).map((value) => value.toExponential(5)),
    fc.constantFrom('.5', '-.03', '+1', '5.', '1E-01', '0.34e+01', '00012', '-0', '1e-400'),
  )

  it('are the doubles that are nearest, as JavaScript reads them, and never −0', () => {
    fc.assert(
      fc.property(fc.array(written), fc.constantFrom(' ', '\n', '\t ', '\r\n'), (words, space) => {
        const read = readDecimals(`${space}${words.join(space)}${space}`, words.length)
        expect(read).toEqual({
          values: words.map((word) => Number(word) + 0),
          wrongAt: undefined,
          moreAt: undefined,
        })
        expect(read.values.some((value) => Object.is(value, -0))).toBe(false)
      }),
      { seed: 3, numRuns: 2000 },
    )
  })

  it.each([
    'x',
    '1,5',
    '--1',
    '1e',
    '.',
    '+',
    '1.2.3',
    '0x10',
    'NaN',
    'Infinity',
    '1e999',
    '1_0',
    '²',
  ])('are not “%s”, of which the place is told', (word) => {
    expect(readDecimals(` 1 2 ${word} 3`, 9)).toEqual({
      values: [1, 2],
      wrongAt: 5,
      moreAt: undefined,
    })
  })

  it('are no more than may be there, and the place of the next is told', () => {
    expect(readDecimals('1 2 3', 2)).toEqual({ values: [1, 2], wrongAt: undefined, moreAt: 4 })
    expect(readDecimals('1 2 ', 3).values).toHaveLength(2)
  })
})
