import fc from 'fast-check'
import { expect, test } from 'vitest'
import { textUuid } from '../../../src/core/base/textUuid.ts'

test('a UUID made from a text is one of version 8 (RFC 9562 §5.8) and always the same', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const uuid = textUuid(text)
      expect(uuid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/u)
      expect(textUuid(text)).toBe(uuid)
    }),
    { seed: 1, numRuns: 500 },
  )
})

test('unlike texts have unlike UUIDs, in each quarter of the digits too', () => {
  const uuids = Array.from({ length: 20_000 }, (_, i) => textUuid(`reel-a cue-${i}`))
  expect(new Set(uuids).size).toBe(uuids.length)
  // Of 20,000 among 2^28 (four bits of a quarter are fixed at most), 0.75 are expected to meet.
  for (const [from, to] of [
    [0, 8],
    [24, 36],
  ] as const)
    expect(new Set(uuids.map((uuid) => uuid.slice(from, to))).size).toBeGreaterThan(19_990)
})
