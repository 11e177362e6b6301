import { expect, it } from 'vitest'
import type { PackCue } from '../../../src/core/agreement/pack/packContents.ts'
import { packEstimate, packSample } from '../../../src/work/review/packEstimate.ts'

const CUE = { alternates: [] }

/** A cue whose pictures have so many characters. */
const shown = (length: number): PackCue =>
  ({ before: 'A'.repeat(length), after: 'A'.repeat(length), alternates: [], clip: null }) as never

it('samples over the whole of the cues, each once', () => {
  expect(packSample([])).toEqual([])
  expect(packSample([1, 2, 3])).toEqual([1, 2, 3])
  expect(packSample(Array.from({ length: 100 }, (_, i) => i))).toEqual([10, 30, 50, 70, 90])
})

it('is near the size where a reel begins with leader', () => {
  const lengths = Array.from({ length: 40 }, (_, i) => (i < 2 ? 900 : 90_000 + 1000 * (i % 5)))
  const whole = lengths.reduce((sum, length) => sum + 2 * length, 0)
  const reckoned = packEstimate(
    lengths.map(() => CUE),
    packSample(lengths).map(shown),
    [],
  )
  expect((reckoned ?? 0) / whole).toBeGreaterThan(0.9)
  expect((reckoned ?? 0) / whole).toBeLessThan(1.15)
})

it('counts the stills of every cue, as bytes and not as text', () => {
  const still = { number: 1, kind: 'before', address: 'A'.repeat(4000) } as const
  const cues = [CUE, CUE]
  const without = packEstimate(cues, [shown(100)], [])
  expect(packEstimate(cues, [shown(100)], [still])).toBe((without ?? 0) + 4 * 3000)
})

it('is not known where no picture could be read', () => {
  expect(packEstimate([CUE], [], [])).toBeUndefined()
})
