import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mapTriple, type Triple } from '../../../src/core/colour/triple.ts'
import { applyProcess } from '../../../src/core/process/applyProcess.ts'
import { boundProcess } from '../../../src/core/process/boundProcess.ts'
import type { CurveStep, ProcessStep } from '../../../src/core/process/processList.ts'
import { MADE_LISTS, madeCube, madeCurve } from '../../support/madeLists.ts'
import { anyStep } from '../../support/processSteps.ts'
import { seeded } from '../../support/seeded.ts'

const part = fc.double({ min: 0, max: 1, noNaN: true })
const three = (numbers: fc.Arbitrary<number>) => fc.tuple(numbers, numbers, numbers)
const level = fc.double({ min: -0.5, max: 1.5, noNaN: true })
/** Widths of boxes from a code to the whole scale. */
const width = fc.double({ min: -10, max: 1, noNaN: true }).map((power) => 2 ** power)

describe('a box of colours through a list', () => {
  for (const size of ['usual', 'any'] as const)
    test(`holds each of its colours, taken through one by one: ${size} numbers`, () => {
      fc.assert(
        fc.property(
          fc.array(anyStep(size), { minLength: 1, maxLength: 4 }),
          three(level),
          three(width),
          fc.array(three(part), { minLength: 8, maxLength: 8 }),
          (steps, low, widths, places) => {
            const list = { name: 'any', steps }
            const high = mapTriple(low, (from, c) => from + widths[c])
            const box = boundProcess(list)({ low, high })
            for (const place of [[0, 0, 0], [1, 1, 1], ...places] as readonly Triple[]) {
              const colour = mapTriple(low, (from, c) =>
                Math.min(high[c], from + widths[c] * place[c]),
              )
              const through = applyProcess(list, colour)
              for (const c of [0, 1, 2] as const) {
                expect(through[c]).toBeGreaterThanOrEqual(box.low[c])
                expect(through[c]).toBeLessThanOrEqual(box.high[c])
              }
            }
          },
        ),
        { seed: 1, numRuns: 3000 },
      )
    })

  test.each<[string, ProcessStep]>([
    ['a cube of 33 by tetrahedra', madeCube(33)],
    ['a cube of 33 by eight places', madeCube(33, 'trilinear')],
    ['a curve of 4,096 places', madeCurve(4096, 3)],
  ])('is hardly wider than its colours are apart: %s', (_, step) => {
    const side = 4 / 1023
    for (const low of [
      [0.2, 0.3, 0.4],
      [0.51, 0.77, 0.03],
    ] as const) {
      const box = boundProcess({ name: 'one', steps: [step] })({
        low,
        high: mapTriple(low, (from) => from + side),
      })
      for (const c of [0, 1, 2] as const) {
        expect(box.high[c] - box.low[c]).toBeGreaterThan(0)
        expect(box.high[c] - box.low[c]).toBeLessThan(3 * side)
      }
    }
  })

  test('is as wide as the places of a long curve that lie in it say', () => {
    const random = seeded(5)
    const values = Array.from({ length: 2001 }, () => random())
    const curve: CurveStep = { kind: 'curve', channels: 1, points: 2001, values }
    const bound = boundProcess({ name: 'one', steps: [curve] })
    for (let first = 0; first < 1800; first += 7) {
      const last = first + Math.floor(200 * random())
      const [low, high] = [first / 2000, last / 2000]
      const box = bound({ low: [low, low, low], high: [high, high, high] })
      const inside = curve.values.slice(first, last + 1)
      for (const c of [0, 1, 2] as const) {
        expect(box.low[c]).toBeCloseTo(Math.min(...inside), 9)
        expect(box.high[c]).toBeCloseTo(Math.max(...inside), 9)
      }
    }
  })

  test('of every kind is bounded over the whole scale', () => {
    for (const list of Object.values(MADE_LISTS)) {
      const box = boundProcess(list)({ low: [-1, -1, -1], high: [2, 2, 2] })
      for (const c of [0, 1, 2] as const) {
        expect(box.low[c]).toBeGreaterThan(-10)
        expect(box.high[c]).toBeLessThan(10)
        expect(box.low[c]).toBeLessThan(box.high[c])
      }
    }
  })
})
