import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { applyCdl, type Cdl } from '../../../src/core/colour/cdl.ts'
import { HIGHEST_LEVEL } from '../../../src/core/colour/grade.ts'
import { invertCdl } from '../../../src/core/colour/invertCdl.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { applyProcess } from '../../../src/core/process/applyProcess.ts'
import type { CdlStepStyle, CubeStep, ProcessStep } from '../../../src/core/process/processList.ts'
import { anyStep } from '../../support/processSteps.ts'

const through = (colour: Triple, ...steps: readonly ProcessStep[]): Triple =>
  applyProcess({ name: 'test', steps }, colour)

const near = (colour: Triple, expected: Triple, digits = 6) => {
  for (const [c, value] of expected.entries()) expect(colour[c]).toBeCloseTo(value, digits)
}

// OpenColorIO 2.1.2 (ociochecklut, float32): facts/otio-clf.md §3.
describe('an ASC CDL step', () => {
  const cdl: Cdl = {
    slope: [1.2, 1, 0.9],
    offset: [-0.02, 0.01, 0.03],
    power: [1.1, 1, 0.9],
    saturation: 0.8,
  }
  const colour: Triple = [0.9, 0.1, 0.4]

  test.each<[CdlStepStyle, Triple]>([
    ['forward', [0.8644421, 0.152442, 0.4072478]],
    ['forward-no-clamp', [0.9202124, 0.1552566, 0.4100624]],
    ['reverse', [0.85, 0.04206499, 0.3983798]],
    ['reverse-no-clamp', [0.8893514, 0.04206499, 0.3983798]],
  ])('%s gives what OpenColorIO gives', (style, expected) => {
    near(through(colour, { kind: 'cdl', style, cdl }), expected)
  })

  test('without saturation gives what OpenColorIO gives', () => {
    const step = { kind: 'cdl', style: 'forward', cdl: { ...cdl, saturation: 1 } } as const
    near(through(colour, step), [1, 0.11, 0.4285072])
  })

  test('is the correction of ASC CDL v1.2 in each of its styles', () => {
    for (const from of [colour, [-0.2, 0.5, 1.4], [0, 1, 2]] as const) {
      const step = (style: CdlStepStyle) => through(from, { kind: 'cdl', style, cdl })
      near(step('forward'), applyCdl(from, cdl, 'clamp'), 13)
      near(step('forward-no-clamp'), applyCdl(from, cdl, 'noclamp'), 13)
      near(step('reverse'), invertCdl(from, cdl, 'clamp'), 13)
      near(step('reverse-no-clamp'), invertCdl(from, cdl, 'noclamp'), 13)
    }
  })

  test('reversed is black in a channel of slope 0, and grey of saturation 0', () => {
    const flat: Cdl = { ...cdl, slope: [0, 1, 1], saturation: 1 }
    for (const style of ['reverse', 'reverse-no-clamp'] as const) {
      const [r, g] = through(colour, { kind: 'cdl', style, cdl: flat })
      expect(r).toBe(0)
      expect(g).toBeCloseTo(0.09, 12)
      const grey: Cdl = { slope: [1, 1, 1], offset: [0, 0, 0], power: [1, 1, 1], saturation: 0 }
      const luma = 0.2126 * 0.9 + 0.7152 * 0.1 + 0.0722 * 0.4
      near(through(colour, { kind: 'cdl', style, cdl: grey }), [luma, luma, luma], 12)
    }
  })
})

test('a matrix multiplies and then adds, as in OpenColorIO', () => {
  const step: ProcessStep = {
    kind: 'matrix',
    rows: [
      [0.9, 0.1, 0],
      [0, 1, 0],
      [0, 0.2, 0.8],
    ],
    offset: [0.05, 0, -0.05],
  }
  near(through([0.9, 0.1, 0.4], step), [0.87, 0.1, 0.29], 12)
})

describe('a range', () => {
  const both = { kind: 'range', low: [0.1, 0.2], high: [0.6, 1.2] } as const

  test('is a line between its two ends, held at both where it clamps', () => {
    near(through([0.1, 0.35, 0.6], { ...both, clamps: true }), [0.2, 0.7, 1.2], 12)
    near(through([0, 1, 0.6], { ...both, clamps: true }), [0.2, 1.2, 1.2], 12)
    near(through([0, 1, 0.6], { ...both, clamps: false }), [0, 2, 1.2], 12)
  })

  test('with one end only holds levels there', () => {
    const colour: Triple = [-0.5, 0.5, 1.5]
    expect(through(colour, { kind: 'range', low: [0.1, 0.1], high: null, clamps: true })).toEqual([
      0.1, 0.5, 1.5,
    ])
    expect(through(colour, { kind: 'range', low: null, high: [0.9, 0.9], clamps: true })).toEqual([
      -0.5, 0.5, 0.9,
    ])
  })
})

describe('a curve', () => {
  // OpenColorIO 2.1.2: facts/otio-clf.md §3; values 0 256 1023 in 10 bits.
  test('has lines between its places, as in OpenColorIO', () => {
    const values = [0, 256 / 1023, 1]
    const step: ProcessStep = { kind: 'curve', channels: 1, points: 3, values }
    near(through([0.25, 0.5, 0.75], step), [0.1251222, 0.2502444, 0.6251222])
  })

  test('of each channel is its own, and its ends are held', () => {
    const values = [0, 0.1, 1, 0.5, 0.6, 0.5, 2, 0.9, -1]
    const step: ProcessStep = { kind: 'curve', channels: 3, points: 3, values }
    near(through([0.25, 0.25, 0.25], step), [0.25, 0.35, 0.75], 12)
    near(through([-3, 7, 1], step), [0, 0.9, -1], 12)
  })
})

describe('a cube', () => {
  /** The identity of 2×2×2, but for its last place. */
  const values = [0, 0, 0, 0, 0, 1, 0, 1, 0, 0, 1, 1, 1, 0, 0, 1, 0, 1, 1, 1, 0, 1, 1, 0.5]
  const cube = (interpolation: CubeStep['interpolation']): CubeStep => ({
    kind: 'cube',
    interpolation,
    points: 2,
    values,
  })

  // OpenColorIO 2.1.2: facts/otio-clf.md §3.
  test('between four places gives what OpenColorIO gives', () => {
    near(through([1, 1, 1], cube('tetrahedral')), [1, 1, 0.5])
    near(through([1, 1, 0.5], cube('tetrahedral')), [1, 1, 0.25])
    near(through([0.2, 0.7, 0.4], cube('tetrahedral')), [0.2, 0.7, 0.3])
  })

  test('between eight places is the product of the parts of the way', () => {
    // 0.4 − 0.5 · 0.2 · 0.7 · 0.4: the last place counts for the product of the parts.
    near(through([0.2, 0.7, 0.4], cube('trilinear')), [0.2, 0.7, 0.372], 12)
  })

  test('is held at its faces', () => {
    for (const interpolation of ['trilinear', 'tetrahedral'] as const)
      near(through([-1, 2, 0.25], cube(interpolation)), [0, 1, 0.25], 12)
  })

  test('of larger size is met at each of its places, red slowest', () => {
    const points = 5
    const place = (r: number, g: number, b: number): Triple => [r * g, g - b, r + b * b]
    const range = Array.from({ length: points }, (_, i) => i / (points - 1))
    const grid = range.flatMap((r) => range.flatMap((g) => range.map((b): Triple => [r, g, b])))
    const all = grid.flatMap(([r, g, b]) => place(r, g, b))
    for (const interpolation of ['trilinear', 'tetrahedral'] as const)
      for (const [r, g, b] of grid)
        near(
          through([r, g, b], { kind: 'cube', interpolation, points, values: all }),
          place(r, g, b),
          12,
        )
  })
})

test('steps come one after another', () => {
  const half: ProcessStep = { kind: 'range', low: [0, 0], high: [1, 0.5], clamps: false }
  const curve: ProcessStep = { kind: 'curve', channels: 1, points: 3, values: [0, 0.1, 1] }
  near(through([0.5, 0.5, 0.5], half, curve), [0.05, 0.05, 0.05], 12)
  near(through([0.5, 0.5, 0.5], curve, half), [0.05, 0.05, 0.05], 12)
  near(through([1, 1, 1], half, curve), [0.1, 0.1, 0.1], 12)
  near(through([1, 1, 1], curve, half), [0.5, 0.5, 0.5], 12)
})

test('any list that a job may hold makes finite colours of finite ones', () => {
  const level = fc.double({ min: -HIGHEST_LEVEL, max: HIGHEST_LEVEL, noNaN: true })
  fc.assert(
    fc.property(
      fc.tuple(level, level, level),
      fc.array(anyStep('any'), { minLength: 1, maxLength: 8 }),
      (colour, steps) => {
        for (const value of through(colour, ...steps))
          expect(Math.abs(value)).toBeLessThanOrEqual(HIGHEST_LEVEL)
      },
    ),
    { seed: 1, numRuns: 1000 },
  )
})
