import { describe, expect, it } from 'vitest'
import { parseNumber } from '../../src/ui/parts/numberText.ts'

describe('a number that was typed', () => {
  it.each([
    ['1.25', 1.25],
    [' 1,25 ', 1.25],
    ['−5', -5],
    ['+.5', 0.5],
    ['5.', 5],
    ['50 %', 50],
    ['50%', 50],
    ['2 ×', 2],
    ['12   fr', 12],
  ])('%j is %d', (text, value) => {
    expect(parseNumber(text)).toBe(value)
  })

  it.each(['', '%', '1.2.3', '1,2,3', '1 2', 'x', '1 % %', '1 fr x'])('%j is none', (text) => {
    expect(parseNumber(text)).toBeUndefined()
  })

  it('is none where a million characters were pasted that are none', () => {
    expect(parseNumber(`${'1'.repeat(1_000_000)}x`)).toBeUndefined()
    expect(parseNumber(`1${' '.repeat(1_000_000)}x`)).toBeUndefined()
  })
})
