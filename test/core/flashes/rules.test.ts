import { describe, expect, test } from 'vitest'
import { bt1886ToLinear } from '../../../src/core/colour/bt1886.ts'
import { srgbToLinear } from '../../../src/core/colour/srgb.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { anchoredLuminance } from '../../../src/core/flashes/anchoredLuminance.ts'
import { FLASH_WHITE } from '../../../src/core/flashes/flashLimits.ts'
import { isGeneralChange } from '../../../src/core/flashes/generalChange.ts'
import { redExcess, redShare } from '../../../src/core/flashes/redFigures.ts'
import { rate } from '../../../src/core/time/rate.ts'
import vectors from '../../vectors/flashes.json' with { type: 'json' }
import { chromaticity } from './chromaticity.ts'
import { flashing, lightAfter, reportOf } from './flashClip.ts'

/** All cells are alike here. */
const SIZE = { width: 16, height: 9 }

const linear = (colour: readonly number[]): Triple => {
  const [r = 0, g = 0, b = 0] = colour.map(srgbToLinear)
  return [r, g, b]
}

test.each(vectors.luminance.rows)('$millivolts mV', ({ millivolts, anchored, bt1886 }) => {
  const { epsilon } = vectors.luminance
  expect(Math.abs(anchoredLuminance(millivolts / 700) - anchored)).toBeLessThan(epsilon)
  expect(Math.abs(bt1886ToLinear(millivolts / 700, FLASH_WHITE, 0) - bt1886)).toBeLessThan(epsilon)
})

test.each(vectors.general.rows)('$darker to $brighter cd/m²', ({ darker, brighter, counts }) => {
  expect(isGeneralChange(darker, brighter)).toBe(counts)
})

test.each(vectors.relative.rows)(
  '$darker to $brighter of white',
  ({ darker, brighter, counts }) => {
    expect(isGeneralChange(darker * FLASH_WHITE, brighter * FLASH_WHITE)).toBe(counts)
  },
)

describe.each(vectors.red.rows)('red $red and $other', (row) => {
  const [red, other] = [linear(row.red), linear(row.other)]
  test('has the figures of the definitions', () => {
    expect(redShare(...red)).toBeCloseTo(row.share, 4)
    if (row.apart !== undefined) {
      const [a, b] = [chromaticity(red), chromaticity(other)]
      const apart = Math.hypot(a[0] - b[0], a[1] - b[1])
      expect(apart).toBeCloseTo(row.apart, 3)
      expect(apart > 0.2).toBe(row.isFar)
    }
    expect(Math.abs(redExcess(...red) - redExcess(...other) - row.excess)).toBeLessThan(0.06)
  })
  test('counts as flashes of red, either first', () => {
    const [a, b] = [row.red as unknown as Triple, row.other as unknown as Triple]
    for (const [one, two] of [
      [a, b],
      [b, a],
    ] as const) {
      const { breaches } = reportOf((n) => (n % 4 < 2 ? one : two), 25, SIZE)
      expect(breaches.filter(({ kind }) => kind === 'red')).toHaveLength(1)
    }
  })
})

test.each(vectors.counting.rows)('$of', (row) => {
  const formula = row.period === undefined ? lightAfter(row.changes ?? []) : flashing(row.period)
  const report = reportOf(formula, 120, { ...SIZE, at: rate(row.num, row.den) })
  expect(report.breaches.length === 0).toBe(row.passes)
  const [breach] = report.breaches
  if (row.isCautious !== undefined) expect(breach).toMatchObject({ isCautious: row.isCautious })
  if (row.within !== undefined) expect(breach).toMatchObject({ changes: row.within })
  if (row.changes && breach)
    expect(breach).toMatchObject({ first: row.changes[0], last: row.changes.at(-1) })
})
