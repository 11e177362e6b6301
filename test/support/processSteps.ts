import fc from 'fast-check'
import type { Triple } from '../../src/core/colour/triple.ts'
import { LARGEST_NUMBER } from '../../src/core/job/limits.ts'
import type { ProcessStep } from '../../src/core/process/processList.ts'

const threeOf = (numbers: fc.Arbitrary<number>): fc.Arbitrary<Triple> =>
  fc.tuple(numbers, numbers, numbers)

/** Numbers of each kind that a step may hold: 'any' that a job may, or those of a film transfer. */
const numbersOf = (size: 'any' | 'usual') => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  if (size === 'usual')
    return {
      any: between(-0.5, 1.5),
      slope: between(0.4, 1.8),
      offset: between(-0.2, 0.2),
      power: between(0.5, 2),
      saturation: between(0.5, 1.6),
    }
  const any = fc.oneof(
    between(-LARGEST_NUMBER, LARGEST_NUMBER),
    fc.constantFrom(0, 1, -1, LARGEST_NUMBER, -LARGEST_NUMBER),
  )
  const positive = fc.oneof(
    between(0, LARGEST_NUMBER),
    fc.constantFrom(0, Number.MIN_VALUE, LARGEST_NUMBER),
  )
  const power = positive.map((value) => value || 1)
  return { any, slope: positive, offset: any, power, saturation: positive }
}

/** A step that `checkProcessList` passes; cubes and curves of a few places. */
export const anyStep = (size: 'any' | 'usual'): fc.Arbitrary<ProcessStep> => {
  const { any, slope, offset, power, saturation } = numbersOf(size)
  const table = (length: number) => fc.array(any, { minLength: length, maxLength: length })
  const cdl = fc.record({
    kind: fc.constant('cdl' as const),
    style: fc.constantFrom(
      'forward' as const,
      'reverse' as const,
      'forward-no-clamp' as const,
      'reverse-no-clamp' as const,
    ),
    cdl: fc.record({
      slope: threeOf(slope),
      offset: threeOf(offset),
      power: threeOf(power),
      saturation,
    }),
  })
  const matrix = fc.record({
    kind: fc.constant('matrix' as const),
    rows: fc.tuple(threeOf(any), threeOf(any), threeOf(any)),
    offset: threeOf(offset),
  })
  const range = fc
    .record({
      from: any,
      width: fc.double({ min: size === 'any' ? 1e-9 : 0.3, max: 2, noNaN: true }),
      to: any,
      rise: fc.double({ min: 0, max: 2, noNaN: true }),
      ends: fc.constantFrom('both', 'low', 'high'),
      clamps: fc.boolean(),
    })
    .map(({ from, width, to, rise, ends, clamps }) => ({
      kind: 'range' as const,
      low: ends === 'high' ? null : ([from, ends === 'low' ? from : to] as const),
      high:
        ends === 'low'
          ? null
          : ends === 'high'
            ? ([from, from] as const)
            : ([from + width, to + rise] as const),
      clamps,
    }))
  const curve = fc
    .record({
      channels: fc.constantFrom(1 as const, 3 as const),
      points: fc.integer({ min: 2, max: 9 }),
    })
    .chain(({ channels, points }) =>
      table(channels * points).map((values) => ({
        kind: 'curve' as const,
        channels,
        points,
        values,
      })),
    )
  const cube = fc
    .record({
      interpolation: fc.constantFrom('trilinear' as const, 'tetrahedral' as const),
      points: fc.integer({ min: 2, max: 4 }),
    })
    .chain(({ interpolation, points }) =>
      table(3 * points ** 3).map((values) => ({
        kind: 'cube' as const,
        interpolation,
        points,
        values,
      })),
    )
  return fc.oneof(cdl, matrix, range, curve, cube)
}
