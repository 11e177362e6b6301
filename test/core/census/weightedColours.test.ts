import { expect, test } from 'vitest'
import { buildCensus } from '../../../src/core/census/buildCensus.ts'
import { seenSpans } from '../../../src/core/census/seenSpans.ts'
import { createColourTally } from '../../../src/core/census/tallyColours.ts'
import { weightedColours } from '../../../src/core/census/weightedColours.ts'
import { decodePlanes } from '../../../src/core/picture/decodePlanes.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Coding } from '../../../src/core/picture/planes.ts'
import { seeded, shadedPlanes } from '../../kernel/randomPictures.ts'

const CODING: Coding = { matrix: 'bt709', range: 'narrow' }
const planes = shadedPlanes(seeded(4), '422', 10, 90, 60)

const censusWith = (most?: number) => {
  const tally = createColourTally('narrow', most)
  tally.add(planes, seenSpans(IDENTITY_FRAMING, planes.width, planes.height))
  const counted = tally.tally()
  if (!counted) throw new Error('no colours')
  return buildCensus(counted, CODING)
}

/** Mean of each channel and of its square over weighted colours. */
const momentsOf = (colours: Float64Array, weights: Float64Array) => {
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  return [1, 2].flatMap((power) =>
    [0, 1, 2].map((c) =>
      weights.reduce((sum, w, i) => sum + (w / all) * (colours[i * 3 + c] ?? 0) ** power, 0),
    ),
  )
}

const picture = decodePlanes(planes, CODING)
const every = Float64Array.from(
  [...picture.r].flatMap((r, i) => [r, picture.g[i] ?? 0, picture.b[i] ?? 0]),
)
const truth = momentsOf(every, new Float64Array(planes.width * planes.height).fill(1))

test('with room for all of them the colours are those of the pixels', () => {
  const { colours, weights } = weightedColours(censusWith(), 1e6)
  expect(weights.reduce((sum, weight) => sum + weight, 0)).toBe(90 * 60)
  momentsOf(colours, weights).forEach((moment, i) => {
    expect(moment).toBeCloseTo(truth[i] ?? 0, 12)
  })
})

test.each([
  ['an exact census', undefined],
  ['one made coarser', 900],
])('fewer colours of %s keep the weight and nearly the spread', (_, most) => {
  const { colours, weights } = weightedColours(censusWith(most), 300)
  expect(weights.length).toBeLessThanOrEqual(300)
  expect(weights.reduce((sum, weight) => sum + weight, 0)).toBe(90 * 60)
  momentsOf(colours, weights).forEach((moment, i) => {
    expect(Math.abs(moment - (truth[i] ?? 0))).toBeLessThan(0.02)
  })
})
