import fc from 'fast-check'
import { expect, test } from 'vitest'
import { at } from '../../../src/core/base/assert.ts'
import { bt1886ToLinear } from '../../../src/core/colour/bt1886.ts'
import { linearToSrgb, srgbToLinear } from '../../../src/core/colour/srgb.ts'
import type { Triple } from '../../../src/core/colour/triple.ts'
import { anchoredLuminance } from '../../../src/core/flashes/anchoredLuminance.ts'
import { cellFigures, FIGURES } from '../../../src/core/flashes/cellFigures.ts'
import { createCellMeans } from '../../../src/core/flashes/cellMeans.ts'
import { isGeneralChange } from '../../../src/core/flashes/generalChange.ts'
import { createGeneralTurns } from '../../../src/core/flashes/generalTurns.ts'
import { redExcess, redShare } from '../../../src/core/flashes/redFigures.ts'
import { createRedTurns } from '../../../src/core/flashes/redTurns.ts'
import { chromaticity } from './chromaticity.ts'
import { fillCells, reportOf } from './flashClip.ts'

const signal = fc.double({ min: 0, max: 1.09, noNaN: true })
const colour = fc.tuple(signal, signal, signal)
const greys = fc.array(signal, { minLength: 2, maxLength: 60 })

const figuresOf = (colour: number | Triple): Float64Array => {
  const cells = createCellMeans(1, 1)
  fillCells(cells, () => colour)
  const figures = new Float64Array(FIGURES)
  cellFigures(cells, figures)
  return figures
}

const turnsOf = (
  pictures: readonly (number | Triple)[],
  create: typeof createGeneralTurns,
): readonly number[] => {
  const turns = create(1)
  return pictures.map((picture) => turns(figuresOf(picture))[0] ?? 0)
}

const countOf = (turns: readonly number[]): number => turns.filter((turn) => turn !== 0).length

/** The most opposing changes there are in a run of luminances, by trying all: slow and obvious. */
const mostChanges = (luminances: readonly number[]): number => {
  const best = (from: number, wanted: number): number => {
    for (let end = from + 1; end < luminances.length; end++)
      for (let start = from; start < end; start++) {
        const [a, b] = [at(luminances, start), at(luminances, end)]
        const isChange = isGeneralChange(Math.min(a, b), Math.max(a, b))
        if (isChange && Math.sign(b - a) === wanted) return 1 + best(end, -wanted)
      }
    return 0
  }
  return Math.max(best(0, 1), best(0, -1))
}

test('the tables of luminance are those of the formulas', () => {
  fc.assert(
    fc.property(signal, (v) => {
      const held = Math.fround(v)
      const figures = figuresOf(v)
      expect(Math.abs(at(figures, 0) - bt1886ToLinear(held, 200, 0))).toBeLessThan(1e-4)
      expect(Math.abs(at(figures, 1) - anchoredLuminance(held))).toBeLessThan(1e-4)
      expect(Math.abs(at(figures, 2) - 200 * srgbToLinear(held))).toBeLessThan(1e-3)
    }),
  )
})

test('changes are as many as each way of counting luminance finds by trying all, at least', () => {
  fc.assert(
    fc.property(greys, (run) => {
      const count = countOf(turnsOf(run, createGeneralTurns))
      const figures = run.map(figuresOf)
      for (const way of [0, 1, 2])
        expect(count).toBeGreaterThanOrEqual(mostChanges(figures.map((each) => at(each, way))))
    }),
    { numRuns: 200 },
  )
})

test('no one way of counting luminance finds all changes', () => {
  const counts = (from: number | Triple, to: number | Triple) =>
    [0, 1, 2].map((way) => {
      const [a, b] = [at(figuresOf(from), way), at(figuresOf(to), way)]
      return isGeneralChange(Math.min(a, b), Math.max(a, b))
    })
  // Dark: only the display of the 2005 anchors; bright: BT.1886, and not that display.
  expect(counts(0, 0.336)).toEqual([false, true, false])
  expect(counts(0.905, 0.97)).toEqual([true, false, true])
})

test('opposing changes alternate', () => {
  fc.assert(
    fc.property(fc.array(colour, { maxLength: 60 }), (run) => {
      for (const create of [createGeneralTurns, createRedTurns]) {
        const turns = turnsOf(run, create).filter((turn) => turn !== 0)
        for (let i = 1; i < turns.length; i++) expect(turns[i]).toBe(-at(turns, i - 1))
      }
    }),
  )
})

test('mirrored time has as many changes', () => {
  fc.assert(
    fc.property(greys, (run) => {
      const forwards = countOf(turnsOf(run, createGeneralTurns))
      expect(countOf(turnsOf([...run].reverse(), createGeneralTurns))).toBe(forwards)
    }),
  )
})

test('a picture held for several frames changes as often', () => {
  fc.assert(
    fc.property(greys, fc.integer({ min: 2, max: 4 }), (run, times) => {
      const held = run.flatMap((picture) => Array.from({ length: times }, () => picture))
      expect(countOf(turnsOf(held, createGeneralTurns))).toBe(
        countOf(turnsOf(run, createGeneralTurns)),
      )
    }),
  )
})

test('what stays within a few percent of a picture never changes', () => {
  const within = fc.double({ min: -0.015, max: 0.015, noNaN: true })
  fc.assert(
    fc.property(signal, fc.array(within, { maxLength: 40 }), (level, moves) => {
      expect(
        countOf(
          turnsOf(
            moves.map((move) => level + move),
            createGeneralTurns,
          ),
        ),
      ).toBe(0)
    }),
  )
})

test('whatever a definition of red flashes finds between two colours is found', () => {
  fc.assert(
    fc.property(colour, colour, (a, b) => {
      const [one, two] = [a, b].map((each): Triple => {
        const [r, g, b2] = each.map((v) => srgbToLinear(Math.min(1, Math.fround(v))))
        return [r ?? 0, g ?? 0, b2 ?? 0]
      }) as [Triple, Triple]
      // What is all but black is no red; and the tables' last digits are not what is asked.
      const isDark = (each: Triple) => Math.max(...each) < 0.02
      const isRed = (each: Triple) => redShare(...each) >= 0.8001 && !isDark(each)
      const [u, v] = [chromaticity(one), chromaticity(two)]
      const isFar = isRed(one) !== isRed(two) && Math.hypot(u[0] - v[0], u[1] - v[1]) > 0.2
      const byExcess =
        (isRed(one) || isRed(two)) && Math.abs(redExcess(...one) - redExcess(...two)) > 20.001
      const isSeen = !isDark(one) && !isDark(two)
      const signals = [one, two].map((each) => each.map(linearToSrgb) as unknown as Triple)
      if ((isFar && isSeen) || byExcess) expect(countOf(turnsOf(signals, createRedTurns))).toBe(1)
    }),
    { numRuns: 3000 },
  )
})

test('clips of any pictures are told alike from any frame on', () => {
  fc.assert(
    fc.property(fc.array(colour, { minLength: 1, maxLength: 60 }), (run) => {
      const formula = (n: number) => at(run, n)
      const size = { width: 6, height: 4 }
      const report = reportOf(formula, run.length, size)
      const later = reportOf(formula, run.length, { ...size, first: 1001 })
      expect(later.series).toEqual(report.series)
      expect(later.breaches.map((each) => ({ ...each, first: 0, last: 0 }))).toEqual(
        report.breaches.map((each) => ({ ...each, first: 0, last: 0 })),
      )
    }),
  )
})
