import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  applyCdl,
  type Cdl,
  type CdlStyle,
  cdlToGrade,
  checkCdl,
  gradeToCdl,
} from '../../../src/core/colour/cdl.ts'
import { type Grade, gradeColour } from '../../../src/core/colour/grade.ts'
import { invertCdl } from '../../../src/core/colour/invertCdl.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import vectors from '../../vectors/ascCdl.json' with { type: 'json' }

const setOf = (name: string): Cdl =>
  vectors.sets[name as keyof typeof vectors.sets] as unknown as Cdl

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const triple = (min: number, max: number): fc.Arbitrary<Triple> =>
  fc.tuple(number(min, max), number(min, max), number(min, max))

const anyGrade: fc.Arbitrary<Grade> = fc
  .record({
    lift: triple(-0.3, 0.3),
    gamma: triple(0.2, 4),
    gain: triple(0.4, 2),
    saturation: number(0, 3),
  })
  .map((grade) => grade)

describe('ASC CDL', () => {
  it.each(vectors.rows)('set $set $direction $style: $input gives $output', (row) => {
    const cdl = setOf(row.set)
    const apply = row.direction === 'forward' ? applyCdl : invertCdl
    const out = apply(row.input as unknown as Triple, cdl, row.style as CdlStyle)
    for (const c of [0, 1, 2] as const) {
      const scale = Math.max(1, Math.abs(row.output[c] as number))
      expect(Math.abs(out[c] - (row.output[c] as number)) / scale).toBeLessThan(vectors.epsilon)
    }
  })

  it('is the same function as the grade, in the no-clamp style', () => {
    fc.assert(
      fc.property(anyGrade, triple(-0.5, 1.5), (grade, rgb) => {
        const direct = gradeColour(rgb, grade)
        const throughCdl = applyCdl(rgb, gradeToCdl(grade), 'noclamp')
        for (const c of [0, 1, 2] as const) {
          const scale = Math.max(1, Math.abs(direct[c]))
          expect(Math.abs(throughCdl[c] - direct[c]) / scale).toBeLessThan(1e-9)
        }
      }),
      { seed: 1, numRuns: 500 },
    )
  })

  it('goes from grade to CDL and back without loss', () => {
    fc.assert(
      fc.property(anyGrade, (grade) => {
        const back = cdlToGrade(gradeToCdl(grade))
        for (const stage of ['lift', 'gamma', 'gain'] as const)
          for (const c of [0, 1, 2] as const)
            expect(back[stage][c]).toBeCloseTo(grade[stage][c], 12)
        expect(back.saturation).toBe(grade.saturation)
      }),
      { seed: 2, numRuns: 500 },
    )
  })

  it('lift moves only black, and gain only white', () => {
    fc.assert(
      fc.property(anyGrade, number(-0.2, 0.2), (grade, shift) => {
        const lifted: Grade = {
          ...grade,
          saturation: 1,
          lift: [grade.lift[0] + shift, grade.lift[1] + shift, grade.lift[2] + shift],
        }
        const plain = { ...grade, saturation: 1 }
        const [white, whiteAfter] = [gradeColour([1, 1, 1], plain), gradeColour([1, 1, 1], lifted)]
        for (const c of [0, 1, 2] as const) expect(whiteAfter[c]).toBeCloseTo(white[c], 10)
        const raised: Grade = {
          ...plain,
          gain: [grade.gain[0] + 0.3, grade.gain[1], grade.gain[2]],
        }
        expect(gradeColour([0, 0, 0], raised)).toEqual(gradeColour([0, 0, 0], plain))
      }),
      { seed: 3, numRuns: 300 },
    )
  })

  it.each<[string, Partial<Cdl>]>([
    ['slope', { slope: [1, -0.1, 1] }],
    ['power', { power: [1, 1, 0] }],
    ['saturation', { saturation: -1 }],
    ['offset', { offset: [Number.NaN, 0, 0] }],
  ])('refuses a %s outside the ranges of v1.2, naming the field', (field, change) => {
    const result = checkCdl({ ...setOf('A'), ...change })
    expect(result.ok).toBe(false)
    if (!result.ok) expect(result.problems[0].at?.field).toBe(field)
  })
})
