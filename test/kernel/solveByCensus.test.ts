import { expect, test } from 'vitest'
import { buildCensus } from '../../src/core/census/buildCensus.ts'
import { weightedColours } from '../../src/core/census/weightedColours.ts'
import { type Grade, gradeColour, IDENTITY_GRADE } from '../../src/core/colour/grade.ts'
import { IDENTITY_FRAMING } from '../../src/core/picture/framing.ts'
import type { Coding, Planes } from '../../src/core/picture/planes.ts'
import { bringInside } from '../../src/core/solve/bringInside.ts'
import { matchTo } from '../../src/core/solve/matchTo.ts'
import { EBU_R103_V3 } from '../../src/core/tolerance/profile.ts'
import { medianDeltaE } from '../support/medianDeltaE.ts'
import { readStill } from '../support/readStill.ts'
import { builtKernel } from './builtKernel.ts'

const kernel = await builtKernel()
const CODING: Coding = { matrix: 'bt709', range: 'full' }
const UNFILTERED = { ...EBU_R103_V3, filtered: false }

/** A photograph as the frame of a file. */
const frameOf = (name: string): Planes => {
  const { width, height, pixels } = readStill(name)
  const plane = (c: 0 | 1 | 2) => Uint8Array.from(pixels, (pixel) => Math.round(pixel[c] * 255))
  return { width, height, layout: 'rgb', depth: 8, samples: [plane(0), plane(1), plane(2)] }
}

const inputOf = (planes: Planes, grade: Grade) => ({
  planes,
  coding: CODING,
  grade,
  framing: IDENTITY_FRAMING,
})

const censusOf = (frames: readonly Planes[]) => {
  const counter = kernel.countColours('full')
  for (const planes of frames)
    kernel.measureLevels(inputOf(planes, IDENTITY_GRADE), 'bt709', UNFILTERED, counter)
  const tally = counter.tally()
  if (!tally) throw new Error('no colours')
  return buildCensus(tally, CODING)
}

test('a cue is brought inside by its census, and its frames measure inside', () => {
  const frames = [frameOf('astronaut-128'), frameOf('astronaut-128')]
  const census = censusOf(frames)
  const read = kernel.censusReader(census)
  const grade: Grade = { ...IDENTITY_GRADE, gain: [1.2, 1.25, 1.15], saturation: 1.3 }
  const answer = bringInside({
    colours: weightedColours(census),
    grade,
    matrix: 'bt709',
    profile: UNFILTERED,
    shareOutside: (tried) => {
      const { outsideAtMost, pixels } = read(tried, UNFILTERED)
      return outsideAtMost / pixels
    },
  })
  if (!answer.ok) throw new Error(answer.problems[0].says)
  const shareOf = (tried: Grade) =>
    frames.map((planes) => {
      const { outside, pixels } = kernel.measureLevels(inputOf(planes, tried), 'bt709', UNFILTERED)
      return outside / pixels
    })
  for (const share of shareOf(grade)) expect(share).toBeGreaterThan(UNFILTERED.area)
  for (const share of shareOf(answer.value.grade)) {
    expect(share).toBeLessThanOrEqual(UNFILTERED.area)
    expect(share).toBeCloseTo(answer.value.shareAfter, 9)
  }
})

test('a cue is matched to another by their censuses', () => {
  const { pixels } = readStill('coffee-128')
  const cast: Grade = { ...IDENTITY_GRADE, gain: [1.1, 1, 0.85], gamma: [1.1, 1, 0.9] }
  const colours = weightedColours(censusOf([frameOf('coffee-128')]))
  const wanted = pixels.map((pixel) => gradeColour(pixel, cast))
  const answer = matchTo({
    colours,
    grade: IDENTITY_GRADE,
    reference: {
      colours: Float64Array.from(wanted.flat()),
      weights: new Float64Array(wanted.length).fill(1),
    },
  })
  if (!answer.ok) throw new Error(answer.problems[0].says)
  const found = pixels.map((pixel) => gradeColour(pixel, answer.value.grade))
  expect(medianDeltaE(found, wanted)).toBeLessThan(1.5)
})
