import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { edlForeignText, readEdlForeign } from '../../../../src/core/formats/edl/edlForeign.ts'

const text = fc.oneof(
  fc.string({ maxLength: 40 }),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.constantFrom('"', '\\', '\n', '\u0000', '\ud800', '\udfff', '\u2028', '\u007f', '\uffff', '🎞'),
)
const texts = fc.array(text, { minLength: 1, maxLength: 4 })

describe('what is kept of another list', () => {
  it('is the JSON that the language itself writes, and is read back the same', () => {
    const kept = fc.record(
      { name: text, events: texts, comments: texts, notTaken: texts },
      { requiredKeys: [] },
    )
    fc.assert(
      fc.property(kept, (said) => {
        const json = JSON.stringify(said)
        const { name, events, comments, notTaken } = said
        const inOrder = JSON.stringify({ name, events, comments, notTaken })
        expect(edlForeignText(said)).toBe(inOrder === '{}' ? '' : inOrder)
        expect(readEdlForeign(json)).toEqual(JSON.parse(json))
      }),
      { seed: 1, numRuns: 2000 },
    )
  })
})
