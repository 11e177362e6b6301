import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Grade, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import { allOf } from '../../../src/core/colour/gradeViews.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import { moveLabel } from '../../../src/core/surface/moveLabel.ts'
import { moveFraming, moveGrade, readNumber } from '../../../src/core/surface/moveValues.ts'
import { SURFACE_NUMBERS, withinLimits } from '../../../src/core/surface/surfaceNumber.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const tripleIn = (min: number, max: number) =>
  fc.tuple(real(min, max), real(min, max), real(min, max))
const grade: fc.Arbitrary<Grade> = fc.record({
  lift: tripleIn(-0.2, 0.2),
  gamma: tripleIn(0.8, 2),
  gain: tripleIn(0.7, 1.5),
  saturation: real(0, 2),
})

describe('the numbers a surface moves', () => {
  it.each(SURFACE_NUMBERS.map((number) => [number.id, number] as const))(
    '%s is read as it was set',
    (id, number) => {
      fc.assert(
        fc.property(grade, real(0.4, 0.6), (g, part) => {
          const [low, high] = number.span
          const value = low + part * (high - low)
          const wanted = new Map([[id, value]])
          const moved = {
            grade: moveGrade(g, wanted),
            framing: moveFraming(IDENTITY_FRAMING, wanted),
          }
          const isStopped = number.of === 'grade' && moved.grade === g
          if (!isStopped) expect(readNumber(id, moved)).toBeCloseTo(value, 8)
        }),
      )
    },
  )

  it.each(SURFACE_NUMBERS.map((number) => [number.id, number] as const))(
    '%s at rest lies within the travel of a fader',
    (id, { span, limits }) => {
      const rest = readNumber(id, { grade: IDENTITY_GRADE, framing: IDENTITY_FRAMING })
      expect(rest).toBeGreaterThanOrEqual(span[0])
      expect(rest).toBeLessThanOrEqual(span[1])
      expect(limits[0]).toBeLessThanOrEqual(span[0])
      expect(limits[1]).toBeGreaterThanOrEqual(span[1])
    },
  )

  it('a tint keeps the luma-weighted mean', () => {
    fc.assert(
      fc.property(grade, real(-0.1, 0.1), real(-0.1, 0.1), (g, cb, cr) => {
        const moved = moveGrade(g, new Map([['gain-cb', cb] as const, ['gain-cr', cr] as const]))
        expect(allOf(moved.gain)).toBeCloseTo(allOf(g.gain), 8)
      }),
    )
  })

  it('never makes a grade that cannot stand', () => {
    fc.assert(
      fc.property(grade, fc.constantFrom(...SURFACE_NUMBERS), real(-10, 10), (g, number, value) => {
        const moved = moveGrade(g, new Map([[number.id, withinLimits(number, value)]]))
        for (const c of [0, 1, 2] as const) {
          expect(moved.gain[c]).toBeGreaterThanOrEqual(moved.lift[c])
          expect(moved.gamma[c]).toBeGreaterThan(0)
        }
        expect(moved.saturation).toBeGreaterThanOrEqual(0)
      }),
    )
  })
})

it('a movement is named for what it moves', () => {
  expect(moveLabel(['lift-cb', 'lift-cr'])).toBe('shadow tint')
  expect(moveLabel(['lift-all'])).toBe('lift all')
  expect(moveLabel(['lift-cb', 'gain-cr', 'gain-cb'])).toBe('shadow tint and highlight tint')
  expect(moveLabel(['lift-cb', 'gain-cr', 'saturation'])).toBe('balance')
})
