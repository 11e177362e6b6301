import { expect, test } from 'vitest'
import { applyCdl, type CdlStyle, gradeToCdl } from '../../src/core/colour/cdl.ts'
import { type Grade, gradeColour } from '../../src/core/colour/grade.ts'
import { invertCdl } from '../../src/core/colour/invertCdl.ts'
import type { Triple } from '../../src/core/colour/triple.ts'
import { between, seeded } from '../kernel/randomPictures.ts'
import { askCdl, type CdlDirection } from './openColorIo.ts'

const random = seeded(20)

/** Values that float32 holds, so that handing them over changes nothing. */
const triple = (low: number, high: number): Triple => {
  const any = () => Math.fround(between(random, low, high))
  return [any(), any(), any()]
}

const COLOURS_EACH = 6

const cases = Array.from({ length: 10_000 }, () => {
  const grade: Grade = {
    lift: triple(-0.3, 0.3),
    gamma: triple(0.4, 2.5),
    gain: triple(0.5, 2),
    saturation: random() < 0.2 ? 1 : between(random, 0.25, 2.5),
  }
  const colours = Array.from({ length: COLOURS_EACH }, (_, i) =>
    i % 2 === 0 ? triple(0, 1) : triple(-0.5, 1.5),
  )
  return { grade, cdl: gradeToCdl(grade), colours }
})

const answers = askCdl(cases)

/** The largest difference of a channel; of values above 1, in parts of the value. */
const difference = (colour: Triple, expected: Triple): number =>
  Math.max(
    ...expected.map(
      (value, c) => Math.abs((colour[c] ?? NaN) - value) / Math.max(1, Math.abs(value)),
    ),
  )

test('all colours came back', () => {
  expect(answers).toHaveLength(cases.length * COLOURS_EACH * 4)
})

test.each<[CdlStyle, CdlDirection]>([
  ['clamp', 'forward'],
  ['clamp', 'reverse'],
  ['noclamp', 'forward'],
  ['noclamp', 'reverse'],
])(
  '10,000 corrections, %s, %s, are those of the formula and of OpenColorIO',
  (style, direction) => {
    const correct = direction === 'forward' ? applyCdl : invertCdl
    let fromFormula = 0
    let fromOpenColorIo = 0
    for (const answer of answers) {
      if (answer.style !== style || answer.direction !== direction) continue
      const ours = correct(answer.colour, answer.cdl, style)
      fromFormula = Math.max(fromFormula, difference(ours, answer.formula))
      fromOpenColorIo = Math.max(fromOpenColorIo, difference(ours, answer.openColorIo))
    }
    console.log(
      `${style} ${direction}: largest difference from the formula in float64 ` +
        `${fromFormula.toExponential(1)}, from OpenColorIO in float32 ${fromOpenColorIo.toExponential(1)}`,
    )
    expect(fromFormula).toBeLessThan(1e-12)
    expect(fromOpenColorIo).toBeLessThan(2e-5)
  },
)

test('the grade itself is the no-clamp correction', () => {
  const plain = answers.filter((a) => a.style === 'noclamp' && a.direction === 'forward')
  const largest = { formula: 0, openColorIo: 0 }
  for (const [i, { colour, formula, openColorIo }] of plain.entries()) {
    const grade = cases[Math.floor(i / COLOURS_EACH)]?.grade as Grade
    const ours = gradeColour(colour, grade)
    largest.formula = Math.max(largest.formula, difference(ours, formula))
    largest.openColorIo = Math.max(largest.openColorIo, difference(ours, openColorIo))
  }
  expect(plain).toHaveLength(cases.length * COLOURS_EACH)
  expect(largest.formula).toBeLessThan(1e-12)
  expect(largest.openColorIo).toBeLessThan(2e-5)
})
