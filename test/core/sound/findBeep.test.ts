import { expect, it } from 'vitest'
import { findBeep } from '../../../src/core/sound/findBeep.ts'

/** An envelope of 200 values a second: a quiet floor, and levels from a second on, each so long. */
const envelope = (parts: readonly (readonly [at: number, seconds: number, level: number])[]) => {
  const values = new Float32Array(200 * 10).fill(0.002)
  for (const [at, seconds, level] of parts)
    values.fill(level, Math.round(at * 200), Math.round((at + seconds) * 200))
  return values
}

it('finds a frame of tone two seconds before the sound begins', () => {
  expect(
    findBeep(
      envelope([
        [2, 0.04, 0.3],
        [4, 6, 0.4],
      ]),
    ),
  ).toBe(2)
})

it.each([
  ['long', [[2, 0.5, 0.3]]],
  ['a click', [[2, 0.005, 0.9]]],
  ['too soft', [[2, 0.04, 0.02]]],
  [
    'after something as loud',
    [
      [1.9, 0.05, 0.2],
      [2, 0.04, 0.3],
    ],
  ],
] as const)('is not misled by what is %s', (_, parts) => {
  expect(findBeep(envelope(parts))).not.toBe(2)
})

it('finds none in silence', () => {
  expect(findBeep(envelope([]))).toBeUndefined()
})
