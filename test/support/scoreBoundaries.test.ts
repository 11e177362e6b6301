import { expect, it } from 'vitest'
import vectors from '../vectors/shotScoring.json' with { type: 'json' }
import { scoreBoundaries } from './scoreBoundaries.ts'

it.each(vectors.rows)('scores $truth against $found within $tolerance', (row) => {
  const score = scoreBoundaries(row.truth, row.found, row.tolerance)
  expect([score.hits, score.falseOnes, score.missed]).toEqual([row.hits, row.falseOnes, row.missed])
  expect(Math.abs(score.precision - row.precision)).toBeLessThan(vectors.epsilon)
  expect(Math.abs(score.recall - row.recall)).toBeLessThan(vectors.epsilon)
  expect(Math.abs(score.f1 - row.f1)).toBeLessThan(vectors.epsilon)
})
