import { expect, it } from 'vitest'
import { afterglow, type LineProfile } from '../../../src/core/lineup/afterglow.ts'

/** White for two units, then black with a streak: 40 samples a unit, an edge between two of them. */
const profile = (
  terms: readonly (readonly [constant: number, part: number])[],
  [black, white] = [30, 660],
  noise = 0,
): LineProfile => {
  let seed = 7
  const random = () => {
    seed = (seed * 48_271) % 2_147_483_647
    return seed / 2_147_483_647 - 0.5
  }
  const x = Array.from({ length: 1000 }, (_, i) => i / 40)
  const edge = 2 - 1 / 80
  const y = x.map((at) => {
    const level =
      at < edge ? 1 : terms.reduce((sum, [t, part]) => sum + part * Math.exp(-(at - edge) / t), 0)
    return (black ?? 0) + ((white ?? 1) - (black ?? 0)) * (level + noise * random())
  })
  return { x, y }
}

it('finds time constants and parts, as many as there are, whatever the levels are', () => {
  for (const terms of [
    [[1.2, 0.06]],
    [
      [0.4, 0.05],
      [3, 0.03],
    ],
    [
      [0.2, 0.06],
      [1, 0.04],
      [5, 0.02],
    ],
  ] as const) {
    const found = afterglow(profile(terms))
    if (!found.ok) throw new Error(found.problems[0].says)
    expect(found.value.edge).toBeCloseTo(2 - 1 / 80, 9)
    expect(found.value.terms).toHaveLength(terms.length)
    for (const [k, [constant, part]] of terms.entries()) {
      expect((found.value.terms[k]?.constant ?? 0) / constant).toBeCloseTo(1, 2)
      expect((found.value.terms[k]?.part ?? 0) / part).toBeCloseTo(1, 2)
    }
  }
})

it('gives settings that take nine tenths of the streak away', () => {
  const found = afterglow(
    profile([
      [0.4, 0.05],
      [3, 0.03],
    ]),
  )
  if (!found.ok) throw new Error(found.problems[0].says)
  const { before, after, settings } = found.value
  // The first sample lies half a sample behind the edge.
  expect(before.most).toBeCloseTo(0.05 * Math.exp(-1 / 32) + 0.03 * Math.exp(-1 / 240), 4)
  expect(Math.abs(after.most)).toBeLessThan(0.1 * before.most)
  expect(after.rms).toBeLessThan(0.1 * before.rms)
  for (const setting of settings) expect(setting).toBeGreaterThan(0.02)
})

it('does what can be done with the time constants a machine has, inside their limit', () => {
  const streak = profile([
    [0.4, 0.05],
    [3, 0.03],
  ])
  const found = afterglow(streak, { correctors: [0.3, 1, 4] })
  if (!found.ok) throw new Error(found.problems[0].says)
  expect(found.value.after.rms).toBeLessThan(0.12 * found.value.before.rms)
  const tied = afterglow(streak, { correctors: [0.4, 3], most: 0.02 })
  if (!tied.ok) throw new Error(tied.problems[0].says)
  expect(Math.max(...tied.value.settings)).toBeLessThanOrEqual(0.02)
  expect(tied.value.after.rms).toBeGreaterThan(found.value.after.rms)
})

it('holds in noise of a fifth of a percent', () => {
  const terms = [
    [0.4, 0.05],
    [3, 0.03],
  ] as const
  const found = afterglow(profile(terms, [0, 1], 0.004))
  if (!found.ok) throw new Error(found.problems[0].says)
  expect(found.value.terms).toHaveLength(2)
  for (const [k, [constant, part]] of terms.entries()) {
    expect(Math.abs((found.value.terms[k]?.constant ?? 0) / constant - 1)).toBeLessThan(0.15)
    expect(Math.abs((found.value.terms[k]?.part ?? 0) / part - 1)).toBeLessThan(0.15)
  }
})

it.each([
  [
    'from black to white',
    { x: [...Array(60).keys()], y: Array.from({ length: 60 }, (_, i) => Number(i > 20)) },
    'from white to black',
  ],
  ['too short', { x: [0, 1, 2, 3, 4, 5, 6, 7], y: [1, 1, 1, 1, 0.1, 0, 0, 0] }, 'fewer than 16'],
  ['uneven', { x: [0, 1, 5, 6], y: [1, 1, 0, 0] }, 'evenly rising'],
])('says what is wrong with a profile that is %s', (_, wrong, says) => {
  const found = afterglow(wrong)
  expect(!found.ok && found.problems[0].says).toContain(says)
})
