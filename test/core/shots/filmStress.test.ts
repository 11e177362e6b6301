import { describe, expect, it } from 'vitest'
import type { Boundary } from '../../../src/core/shots/boundary.ts'
import { frameSignature } from '../../../src/core/shots/frameSignature.ts'
import { createShotFinder } from '../../../src/core/shots/shotFinder.ts'
import {
  FRAME_HEIGHT,
  FRAME_WIDTH,
  greyPlanes,
  type Look,
  lookAt,
  makeScene,
  type Scene,
} from '../../support/madeScene.ts'
import { seeded } from '../../support/seeded.ts'

type Picture = Float32Array

const find = (pictures: readonly Picture[]): readonly Boundary[] => {
  const finder = createShotFinder()
  const found = pictures.flatMap((picture) => finder.push(frameSignature(greyPlanes(picture))))
  return [...found, ...finder.finish()]
}

const cutsOf = (boundaries: readonly Boundary[]): readonly number[] =>
  boundaries.filter(({ kind }) => kind === 'cut').map(({ first }) => first)

const HOME: Look = { x: 0.5, y: 0.5, width: 0.6 }

/** A shot: a scene seen with a slow drift. */
const shot = (
  seed: number,
  length: number,
  from = HOME,
  to: Look = { ...from, x: from.x + 0.05 },
) => {
  const scene: Scene = makeScene(seed)
  return Array.from({ length }, (_, n) => {
    const t = n / Math.max(1, length - 1)
    return lookAt(scene, {
      x: from.x + (to.x - from.x) * t,
      y: from.y + (to.y - from.y) * t,
      width: from.width + (to.width - from.width) * t,
    })
  })
}

const each = (
  pictures: readonly Picture[],
  change: (level: number, n: number, i: number) => number,
) => pictures.map((picture, n) => picture.map((level, i) => change(level, n, i)))

const SHOTS = [shot(1, 40), shot(2, 30), shot(3, 50), shot(4, 25)]
const REEL = SHOTS.flat()
const CUTS = [40, 70, 120]

describe('the shot finder on film-like trouble', () => {
  it('finds plain cuts on their frames', () => {
    expect(cutsOf(find(REEL))).toEqual(CUTS)
  })

  it('is not disturbed by flicker of ±20 %', () => {
    const random = seeded(5)
    const gains = REEL.map(() => 0.8 + 0.4 * random())
    expect(cutsOf(find(each(REEL, (level, n) => level * (gains[n] ?? 1))))).toEqual(CUTS)
  })

  it('is not disturbed by grain, and finds cuts in a dark print', () => {
    const random = seeded(6)
    const dark = each(REEL, (level) => 0.25 * level + 0.02 * (random() + random() - 1))
    expect(cutsOf(find(dark))).toEqual(CUTS)
  })

  it('takes no white flash of one to three frames for a cut', () => {
    const flashes = new Map([
      [20, 1],
      [55, 1],
      [56, 1],
      [90, 0.7],
      [91, 0.9],
      [92, 0.5],
    ])
    const lit = each(REEL, (level, n) => level + (1 - level) * (flashes.get(n) ?? 0))
    expect(find(lit).map(({ first }) => first)).toEqual(CUTS)
  })

  it('takes no dust and no scratch for a cut', () => {
    const random = seeded(7)
    const dirty = REEL.map((picture) => {
      const out = picture.slice()
      for (let k = 0; k < 6; k++) {
        const at = Math.floor(random() * (out.length - 800))
        for (let y = 0; y < 4; y++)
          out.fill(random() < 0.5 ? 0 : 1, at + y * FRAME_WIDTH, at + y * FRAME_WIDTH + 5)
      }
      const x = Math.floor(60 + 10 * random())
      for (let y = 0; y < FRAME_HEIGHT; y++) out[y * FRAME_WIDTH + x] = 1
      return out
    })
    expect(cutsOf(find(dirty))).toEqual(CUTS)
  })

  it('takes no whip pan for a cut', () => {
    const scene = makeScene(8)
    const whip = Array.from({ length: 60 }, (_, n) => {
      const t = Math.min(1, Math.max(0, (n - 24) / 9))
      const x = 0.3 + 0.4 * t * t * (3 - 2 * t)
      return lookAt(scene, { x, y: 0.5, width: 0.4 })
    })
    expect(find(whip)).toEqual([])
  })

  it('takes no weave, zoom, or caption for a cut', () => {
    const random = seeded(9)
    const scene = makeScene(10)
    const held = Array.from({ length: 80 }, (_, n) =>
      lookAt(scene, {
        x: 0.5 + 0.006 * (random() - 0.5),
        y: 0.5 + 0.006 * (random() - 0.5),
        width: 0.7 - 0.003 * n,
      }),
    )
    const captioned = held.map((picture, n) => {
      if (n < 30) return picture
      const out = picture.slice()
      for (let y = 110; y < 126; y++)
        for (let x = 40; x < 150; x++)
          if ((Math.floor(x / 5) + Math.floor(y / 8)) % 2 === 0) out[y * FRAME_WIDTH + x] = 1
      return out
    })
    expect(find(captioned)).toEqual([])
  })

  it('reports a fade out and in through black by its first and last frames', () => {
    const [before, after] = [shot(11, 50), shot(12, 50)]
    const out = each(before, (level, n) => level * Math.min(1, Math.max(0, (49 - n) / 20)))
    const back = each(after, (level, n) => level * Math.min(1, n / 16))
    const found = find([...out, ...back])
    expect(found.map(({ kind }) => kind)).toEqual(['fade-out', 'fade-in'])
    expect(Math.abs((found[0]?.first ?? 0) - 30)).toBeLessThanOrEqual(2)
    expect(Math.abs((found[1]?.last ?? 0) - 65)).toBeLessThanOrEqual(2)
  })

  it('reports a dissolve of twenty frames within two frames', () => {
    const [before, after] = [shot(13, 60), shot(14, 60)]
    const mixed = Array.from({ length: 20 }, (_, k) => {
      const from = before[40 + k] as Picture
      const to = after[k] as Picture
      const t = (k + 1) / 21
      return from.map((level, i) => level + ((to[i] ?? 0) - level) * t)
    })
    const found = find([...before.slice(0, 40), ...mixed, ...after.slice(20)])
    expect(found.map(({ kind }) => kind)).toEqual(['dissolve'])
    expect(Math.abs((found[0]?.first ?? 0) - 40)).toBeLessThanOrEqual(2)
    expect(Math.abs((found[0]?.last ?? 0) - 59)).toBeLessThanOrEqual(2)
  })

  it.each([5, 9, 40])(
    'reports a dissolve of %i frames, of pans that go on through it',
    (length) => {
      const pan = (seed: number): readonly Picture[] =>
        shot(seed, 90, { x: 0.4, y: 0.5, width: 0.5 }, { x: 0.6, y: 0.5, width: 0.5 })
      const [before, after] = [pan(51), pan(52)]
      const mixed = Array.from({ length }, (_, k) => {
        const from = before[45 + k] as Picture
        const to = after[k] as Picture
        const t = (k + 1) / (length + 1)
        return from.map((level, i) => level + ((to[i] ?? 0) - level) * t)
      })
      const found = find([...before.slice(0, 45), ...mixed, ...after.slice(length)])
      expect(found.map(({ kind }) => kind)).toEqual(['dissolve'])
      expect(Math.abs((found[0]?.first ?? 0) - 45)).toBeLessThanOrEqual(2)
      expect(Math.abs((found[0]?.last ?? 0) - (44 + length))).toBeLessThanOrEqual(2)
    },
  )

  it.each([
    ['above and below', (x: number, y: number) => y < 20 || y >= FRAME_HEIGHT - 20 || x < 0],
    ['at the sides', (x: number) => x < 30 || x >= FRAME_WIDTH - 30],
  ])('is not misled by black bars %s', (_, isBar) => {
    const barred = each(REEL, (level, _n, i) =>
      isBar(i % FRAME_WIDTH, Math.floor(i / FRAME_WIDTH)) ? 0 : level,
    )
    expect(cutsOf(find(barred))).toEqual(CUTS)
  })

  it('takes a long stretch of black for one, not for several', () => {
    const black = Array.from({ length: 180 }, () => new Float32Array(FRAME_WIDTH * FRAME_HEIGHT))
    expect(cutsOf(find([...shot(33, 30), ...black, ...shot(34, 30)]))).toEqual([30, 210])
  })

  it('finds a cut between two framings of one scene, if with less confidence', () => {
    const near = shot(15, 40, { x: 0.42, y: 0.5, width: 0.62 })
    const nearer = shot(15, 40, { x: 0.66, y: 0.4, width: 0.34 })
    expect(cutsOf(find([...near, ...nearer]))).toEqual([40])
  })

  it('takes shots of five frames one after another', () => {
    const short = [21, 22, 23, 24, 25, 26].flatMap((seed) => shot(seed, 5))
    expect(cutsOf(find(short))).toEqual([5, 10, 15, 20, 25])
  })

  it('finds cuts from and to black', () => {
    const black = Array.from({ length: 20 }, () => new Float32Array(FRAME_WIDTH * FRAME_HEIGHT))
    expect(cutsOf(find([...shot(31, 30), ...black, ...shot(32, 30)]))).toEqual([30, 50])
  })

  it.each([0, 1, 2, 3])('takes a reel of %i frames', (length) => {
    expect(find(shot(41, 3).slice(0, length))).toEqual([])
  })

  it('says the same however the reel ends: finding is a matter of pictures, not of reading ahead', () => {
    const whole = cutsOf(find(REEL))
    const cut = cutsOf(find(REEL.slice(0, 100)))
    expect(cut).toEqual(whole.filter((first) => first < 100))
  })
})
