import fc from 'fast-check'
import { expect, test } from 'vitest'
import { buildCensus } from '../../../src/core/census/buildCensus.ts'
import { type CueLook, LOOK_LEVELS, LOOK_SIDE } from '../../../src/core/census/cueLook.ts'
import { lookDistance } from '../../../src/core/census/lookDistance.ts'
import { lookOfCensus, lookOfTally } from '../../../src/core/census/lookOfCensus.ts'
import { seenSpans } from '../../../src/core/census/seenSpans.ts'
import { sumOfLevels } from '../../../src/core/census/sumOfLevels.ts'
import { createColourTally } from '../../../src/core/census/tallyColours.ts'
import { IDENTITY_FRAMING } from '../../../src/core/picture/framing.ts'
import type { Planes } from '../../../src/core/picture/planes.ts'
import { frame } from '../../../src/core/time/frame.ts'
import { openMediaNode } from '../../../src/media/node/openMediaNode.ts'
import { USUAL_LIMIT } from '../../../src/store/lookBook.ts'
import { noisePlanes, shadedPlanes } from '../../kernel/randomPictures.ts'
import { seeded } from '../../support/seeded.ts'

const CODING = { matrix: 'bt709', range: 'narrow' } as const

const lookOf = (pictures: readonly Planes[], most?: number): CueLook => {
  const tally = createColourTally('narrow', most)
  for (const planes of pictures)
    tally.add(planes, seenSpans(IDENTITY_FRAMING, planes.width, planes.height))
  const counted = tally.tally()
  if (!counted) throw new Error('no colours')
  return lookOfCensus(buildCensus(counted, CODING))
}

/** A picture of one 8-bit colour. */
const plain = (y: number, cb: number, cr: number): Planes => ({
  width: 4,
  height: 4,
  layout: '444',
  depth: 8,
  samples: [y, cb, cr].map((code) => new Uint8Array(16).fill(code)) as unknown as Planes['samples'],
})

const sum = (numbers: Iterable<number>): number => [...numbers].reduce((a, b) => a + b, 0)

test('a look has every pixel in each row of levels, and parts that add up to 1', () => {
  const look = lookOf([
    shadedPlanes(seeded(3), '420', 8, 60, 40),
    noisePlanes(seeded(4), '420', 8, 60, 40),
  ])
  expect(look.pixels).toBe(4800)
  for (const levels of look.levels) {
    expect(levels).toHaveLength(LOOK_LEVELS)
    expect(sum(levels)).toBe(4800)
  }
  expect(look.spread).toHaveLength(LOOK_SIDE ** 3)
  expect(sum(look.spread)).toBeCloseTo(1, 5)
})

test('levels stand where they are: black and peak white, and past the ends at the ends', () => {
  const place = (level: number) => Math.floor(((level + 0.08) / 1.2) * LOOK_LEVELS)
  const [black, white, past] = [16, 235, 254].map((code) => lookOf([plain(code, 128, 128)]))
  for (const c of [0, 1, 2, 3] as const) {
    expect(black?.levels[c][place(0)]).toBe(16)
    expect(white?.levels[c][place(1)]).toBe(16)
  }
  expect(past?.levels[3][place(238 / 219)]).toBe(16)
  expect(lookOf([plain(1, 128, 128)]).levels[3][Math.max(0, place(-15 / 219))]).toBe(16)
})

test('it is the same as before, 0 from itself, and no more than 1', () => {
  const random = seeded(5)
  const looks = Array.from({ length: 6 }, () => lookOf([shadedPlanes(random, '420', 8, 40, 30)]))
  const index = fc.integer({ min: 0, max: 5 })
  fc.assert(
    fc.property(index, index, index, (i, j, k) => {
      const [a, b, c] = [looks[i], looks[j], looks[k]] as [CueLook, CueLook, CueLook]
      expect(lookDistance(a, { ...a })).toBe(0)
      expect(lookDistance(a, b)).toBeCloseTo(lookDistance(b, a), 10)
      expect(lookDistance(a, b)).toBeLessThanOrEqual(1 + 1e-6)
      expect(lookDistance(a, c)).toBeLessThanOrEqual(lookDistance(a, b) + lookDistance(b, c) + 1e-6)
    }),
  )
})

test('a little lighter is near, another colour is far, nothing in common is 1', () => {
  const grey = lookOf([plain(110, 128, 128)])
  const near = lookDistance(grey, lookOf([plain(113, 128, 128)]))
  const warm = lookDistance(grey, lookOf([plain(110, 110, 150)]))
  expect(near).toBeGreaterThan(0)
  expect(near).toBeLessThan(0.15)
  expect(warm).toBeGreaterThan(2 * near)
  expect(lookDistance(lookOf([plain(16, 128, 128)]), lookOf([plain(235, 128, 128)]))).toBeCloseTo(
    1,
    5,
  )
})

test('a census made coarser looks the same', () => {
  const pictures = [shadedPlanes(seeded(7), '420', 8, 90, 70)]
  expect(lookDistance(lookOf(pictures), lookOf(pictures, 600))).toBeLessThan(0.05)
})

test('a tally looks as the census laid out from it, made coarser or not', () => {
  for (const most of [undefined, 600]) {
    const tally = createColourTally('narrow', most)
    tally.add(shadedPlanes(seeded(8), '422', 10, 60, 40), seenSpans(IDENTITY_FRAMING, 60, 40))
    const counted = tally.tally()
    if (!counted) throw new Error('no colours')
    const [a, b] = [lookOfTally(counted, CODING), lookOfCensus(buildCensus(counted, CODING))]
    expect(a.pixels).toBe(b.pixels)
    expect(lookDistance(a, b)).toBeLessThan(1e-4)
  }
})

test('levels of several looks are added', () => {
  const [a, b] = [lookOf([plain(60, 128, 128)]), lookOf([plain(180, 128, 128)])]
  const all = sumOfLevels([a, b, b])
  expect(sum(all[3])).toBe(48)
  expect(all[1]).toEqual(a.levels[1].map((count, i) => count + 2 * (b.levels[1][i] ?? 0)))
})

/** Frames of the sample reel, early and late in four shots: harbour, ferryman, range, house. */
const SHOTS = [
  [30, 106],
  [112, 178],
  [246, 316],
  [402, 440],
] as const

test('of the sample reel, two parts of a shot are alike, and none of other shots', async () => {
  const opened = await openMediaNode('samples/slack-water-at-skerrow.mp4')
  if (!opened.ok) throw new Error(opened.problems[0].says)
  const wanted: readonly number[] = SHOTS.flat()
  const looks = new Map<number, CueLook>()
  for await (const { frame: at, planes } of opened.value.readRange(frame(30), frame(441)))
    if (wanted.includes(at)) looks.set(at, lookOf([planes]))
  const seen = (at: number): CueLook => {
    const look = looks.get(at)
    if (!look) throw new Error(`frame ${at} was not read`)
    return look
  }
  // Taken in turn, as scene and countershot: each finds its own kind again.
  for (const [i, [early]] of SHOTS.entries())
    for (const [j, [, late]] of SHOTS.entries()) {
      const distance = lookDistance(seen(early), seen(late))
      if (i === j) expect(distance).toBeLessThan(USUAL_LIMIT)
      else expect(distance).toBeGreaterThan(USUAL_LIMIT + 0.1)
    }
}, 60_000)
