import { converter } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { displayMatrix, displaySignal } from '../../../src/core/colour/displaySignal.ts'
import { applyMatrix3 } from '../../../src/core/colour/matrix3.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'

const toRgb = converter('rgb')
const toP3 = converter('p3')

const level = fc.double({ min: -0.2, max: 1.2, noNaN: true })
const colour = fc.tuple(level, level, level)
const light = (signal: number): number => Math.min(1, Math.max(0, signal)) ** 2.4
const inside = (value: number): number => Math.min(1, Math.max(0, value))

describe('what a display is sent', () => {
  it('is 1.055·x − 0.055 for an sRGB display above the toe, and 12.92·x^2.4 in it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (x) => {
        const [shown] = displaySignal([x, x, x], 'bt709', 'srgb')
        const straight = x ** 2.4 > 0.0031308 ? 1.055 * x - 0.055 : 12.92 * x ** 2.4
        expect(shown).toBeCloseTo(straight, 12)
      }),
      { seed: 61, numRuns: 1000 },
    )
  })

  it('is the light of BT.1886 as culori codes it for sRGB and for Display P3', () => {
    fc.assert(
      fc.property(colour, ([r, g, b]) => {
        const shown = { mode: 'lrgb', r: light(r), g: light(g), b: light(b) } as const
        for (const [space, theirs] of [
          ['srgb', toRgb(shown)],
          ['display-p3', toP3(shown)],
        ] as const) {
          const ours = displaySignal([r, g, b], 'bt709', space)
          for (const [c, value] of [theirs.r, theirs.g, theirs.b].entries())
            expect(Math.abs((ours[c] as number) - inside(value))).toBeLessThan(5e-4)
        }
      }),
      { seed: 62, numRuns: 1000 },
    )
  })

  it('is the same colour on both where the signal has the primaries of BT.2020', () => {
    fc.assert(
      fc.property(fc.tuple(level, level, level), ([r, g, b]) => {
        const wide = { mode: 'lrgb', r: light(r), g: light(g), b: light(b) } as const
        const p3 = applyMatrix3(displayMatrix('bt2020', 'display-p3'), [wide.r, wide.g, wide.b])
        const viaSrgb = applyMatrix3(
          displayMatrix('bt709', 'display-p3'),
          applyMatrix3(displayMatrix('bt2020', 'srgb'), [wide.r, wide.g, wide.b]),
        )
        for (const c of [0, 1, 2] as const) expect(p3[c]).toBeCloseTo(viaSrgb[c], 12)
      }),
      { seed: 63 },
    )
  })

  it('keeps black, white and the clipped ends, and the signal itself as coded', () => {
    const ends: readonly (readonly [Triple, Triple])[] = [
      [
        [-0.1, 0, 0],
        [0, 0, 0],
      ],
      [
        [1.09, 1, 1],
        [1, 1, 1],
      ],
    ]
    for (const matrix of ['bt601', 'bt709', 'bt2020'] as const)
      for (const space of ['srgb', 'display-p3', 'as-coded'] as const)
        for (const [signal, shown] of ends)
          for (const [c, value] of displaySignal(signal, matrix, space).entries())
            expect(value).toBeCloseTo(shown[c] as number, 9)
    expect(displaySignal([0.2, 0.5, 0.7], 'bt709', 'as-coded')).toEqual([0.2, 0.5, 0.7])
  })
})
