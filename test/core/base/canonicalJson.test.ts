import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson, type Json } from '../../../src/core/base/canonicalJson.ts'
import vectors from '../../vectors/canonicalJson.json' with { type: 'json' }

const textOf = (value: Json): string => {
  const made = canonicalJson(value)
  if (!made.ok) throw new Error(made.problems[0].says)
  return made.value
}

describe('canonical JSON', () => {
  it.each(vectors.rows)('of $input is $output', ({ input, output }) => {
    expect(textOf(JSON.parse(input))).toBe(output)
  })

  it.each(vectors.numbers)('of the double $bits is $output', ({ bits, output }) => {
    const view = new DataView(new ArrayBuffer(8))
    view.setBigUint64(0, BigInt(`0x${bits}`))
    expect(textOf(view.getFloat64(0))).toBe(output)
  })

  it('refuses the last rows of Appendix B: not a number, infinity', () => {
    expect(canonicalJson(Number.NaN).ok).toBe(false)
    expect(canonicalJson(Infinity).ok).toBe(false)
  })

  it('holds the same value, and is the same text whatever the order of the names', () => {
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.oneof(fc.string(), fc.constantFrom('é', '−', '😀', '\ufb33', '__proto__', '10', '9')),
          fc.jsonValue(),
        ),
        (object) => {
          const value = object as Json
          const text = textOf(value)
          expect(JSON.stringify(JSON.parse(text))).toHaveLength(text.length)
          const turned = Object.fromEntries(Object.entries(object).reverse()) as Json
          expect(textOf(turned)).toBe(text)
          expect(textOf(JSON.parse(text))).toBe(text)
        },
      ),
      { seed: 1, numRuns: 300 },
    )
  })

  it.each<[string, Json, string]>([
    ['infinity', { a: [1, Infinity] }, 'a.1'],
    ['what is not a number', [Number.NaN], '0'],
    ['half a character', { note: 'x\ud800' }, 'note'],
    ['half a character in a name', { '\udc00': 1 }, '\udc00'],
  ])('refuses %s and says where', (_, value, field) => {
    const made = canonicalJson(value)
    expect(!made.ok && made.problems[0].at?.field).toBe(field)
  })
})
