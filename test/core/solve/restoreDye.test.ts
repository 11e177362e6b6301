import { expect, test } from 'vitest'
import { gradeColour, IDENTITY_GRADE } from '../../../src/core/colour/grade.ts'
import {
  applyMatrix3,
  IDENTITY_MATRIX3,
  invertMatrix3,
  type Matrix3,
  multiplyMatrix3,
} from '../../../src/core/colour/matrix3.ts'
import { mapTriple, type Triple } from '../../../src/core/colour/triple.ts'
import { baseColour, PRINT_BASE } from '../../../src/core/film/filmBase.ts'
import { printDensityToSignal, signalToPrintDensity } from '../../../src/core/film/printDensity.ts'
import { neutralHere } from '../../../src/core/solve/neutralHere.ts'
import { restoreDye } from '../../../src/core/solve/restoreDye.ts'
import { between, seeded } from '../../kernel/randomPictures.ts'
import { medianDeltaE } from '../../support/medianDeltaE.ts'
import { coloursOf, readStill, STILLS } from '../../support/readStill.ts'

/** Absorptions of three makes of print, from memory and guess: the solver assumes the first. */
const MAKES: readonly Matrix3[] = [
  [
    [1, 0.1, 0.03],
    [0.2, 1, 0.1],
    [0.1, 0.25, 1],
  ],
  [
    [1, 0.07, 0.02],
    [0.15, 1, 0.08],
    [0.08, 0.2, 1],
  ],
  [
    [1, 0.15, 0.05],
    [0.28, 1, 0.14],
    [0.15, 0.33, 1],
  ],
]

/**
 * Three places of a photograph, dark to light, among those nearest to grey, and the photograph
 * balanced so that they are grey.
 */
const balancedStill = (name: string) => {
  const { pixels } = readStill(name)
  const lightness = (pixel: Triple) => (pixel[0] + pixel[1] + pixel[2]) / 3
  const cast = (pixel: Triple) => (Math.max(...pixel) - Math.min(...pixel)) / lightness(pixel)
  const greys = [...pixels.keys()]
    .filter((i) => {
      const level = lightness(pixels[i] ?? [0, 0, 0])
      return level > 0.08 && level < 0.7
    })
    .sort((a, b) => cast(pixels[a] ?? [0, 0, 0]) - cast(pixels[b] ?? [0, 0, 0]))
    .slice(0, 200)
    .sort((a, b) => lightness(pixels[a] ?? [0, 0, 0]) - lightness(pixels[b] ?? [0, 0, 0]))
  const places = [20, 100, 180].map((k) => greys[k] ?? 0)
  const balance = neutralHere(
    places.map((i) => pixels[i] ?? [0, 0, 0]),
    IDENTITY_GRADE,
  )
  if (!balance.ok) throw new Error(balance.problems[0].says)
  return { places, pixels: pixels.map((pixel) => gradeColour(pixel, balance.value.grade)) }
}

/** What a print looks like whose dyes, of these absorptions, have kept these parts. */
const faded = (pixels: readonly Triple[], make: Matrix3, [c, m, y]: Triple): Triple[] => {
  const amounts = invertMatrix3(make)
  if (!amounts) throw new Error('no inverse')
  const keep: Matrix3 = [
    [c, 0, 0],
    [0, m, 0],
    [0, 0, y],
  ]
  const fading = multiplyMatrix3(make, multiplyMatrix3(keep, amounts))
  return pixels.map((pixel) =>
    mapTriple(applyMatrix3(fading, mapTriple(pixel, signalToPrintDensity)), printDensityToSignal),
  )
}

const restored = (pixels: readonly Triple[], places: readonly number[], bestKept?: number) => {
  const answer = restoreDye({
    colours: coloursOf(pixels),
    neutrals: places.map((i) => pixels[i] ?? [0, 0, 0]),
    ...(bestKept !== undefined && { bestKept }),
  })
  if (!answer.ok) throw new Error(answer.problems[0].says)
  const base = { ...PRINT_BASE, dyes: answer.value.dyes }
  return { ...answer.value, pixels: pixels.map((pixel) => baseColour(pixel, base)) }
}

/** Cyan loses most, then yellow, magenta hardly: common practice, no published source. */
const keptFrom = (random: () => number): Triple => [
  between(random, 0.45, 0.8),
  between(random, 0.88, 1),
  between(random, 0.6, 0.9),
]

test.each(STILLS)('%s faded by the assumed dyes is restored to a median ΔE00 under 3', (name) => {
  const { places, pixels } = balancedStill(name)
  const random = seeded(name.length)
  for (let i = 0; i < 4; i++) {
    const print = faded(pixels, MAKES[0] ?? IDENTITY_MATRIX3, keptFrom(random))
    const result = restored(print, places)
    const before = medianDeltaE(print, pixels)
    const after = medianDeltaE(result.pixels, pixels)
    expect(after).toBeLessThan(3)
    if (before > 3) expect(after).toBeLessThan(before)
    expect(result.darkest.after).toBeGreaterThan(result.darkest.before)
  }
})

test('dyes that absorb otherwise than assumed are restored to a median ΔE00 under 3 mostly', () => {
  const errors: number[] = []
  for (const name of STILLS)
    for (const make of MAKES.slice(1)) {
      const { places, pixels } = balancedStill(name)
      const print = faded(pixels, make, keptFrom(seeded(name.length + 1)))
      errors.push(medianDeltaE(restored(print, places).pixels, pixels))
    }
  errors.sort((a, b) => a - b)
  expect(errors[errors.length >> 1]).toBeLessThan(3)
})

/**
 * Magenta may lose more than the solver assumes of the best dye. No more is promised than was
 * measured: 6 of 10 prints come to a median ΔE00 under 3, the worst to 9; told what the best dye
 * kept, all to under 0.1.
 */
test('where the best dye lost more than assumed, all that is amiss is one factor of density', () => {
  let under = 0
  let tried = 0
  for (const name of STILLS) {
    const { places, pixels } = balancedStill(name)
    const random = seeded(500 + name.length)
    for (let i = 0; i < 3; i++) {
      const kept: Triple = [
        between(random, 0.45, 0.9),
        between(random, 0.7, 1),
        between(random, 0.5, 0.95),
      ]
      const print = faded(pixels, MAKES[0] ?? IDENTITY_MATRIX3, kept)
      const result = restored(print, places)
      const factors = result.kept.map((part, dye) => part / (kept[dye] ?? 0))
      expect(Math.max(...factors) / Math.min(...factors)).toBeLessThan(1.01)
      tried++
      if (medianDeltaE(result.pixels, pixels) < 3) under++
      const told = restored(print, places, Math.max(...kept))
      expect(medianDeltaE(told.pixels, pixels)).toBeLessThan(0.1)
    }
  }
  expect(under / tried).toBeGreaterThan(0.5)
})

test('what is known of the dye that kept best makes it exact', () => {
  const { places, pixels } = balancedStill('airplane-from-above-128')
  const kept: Triple = [0.4, 0.7, 0.55]
  const result = restored(faded(pixels, MAKES[0] ?? IDENTITY_MATRIX3, kept), places, 0.7)
  result.kept.forEach((part, dye) => {
    expect(part).toBeCloseTo(kept[dye] ?? 0, 9)
  })
  expect(medianDeltaE(result.pixels, pixels)).toBeLessThan(1e-6)
  expect(result.residual).toBeLessThan(1e-9)
})

test('an unfaded grey needs no restoring but for what all three dyes may have lost', () => {
  const answer = restoreDye({
    colours: coloursOf(readStill('coffee-128').pixels),
    neutrals: [[0.4, 0.4, 0.4]],
    bestKept: 1,
  })
  if (!answer.ok) throw new Error(answer.problems[0].says)
  answer.value.dyes.flat().forEach((number, i) => {
    expect(number).toBeCloseTo(IDENTITY_MATRIX3.flat()[i] ?? 0, 12)
  })
})

test('what cannot be a faded grey is refused, with what to do', () => {
  const colours = coloursOf(readStill('coffee-128').pixels)
  const code = (neutrals: readonly Triple[], bestKept?: number) => {
    const answer = restoreDye({ colours, neutrals, ...(bestKept !== undefined && { bestKept }) })
    return answer.ok ? 'ok' : answer.problems[0].code
  }
  expect(code([])).toBe('missing')
  expect(code(Array.from({ length: 6 }, (): Triple => [0.4, 0.4, 0.4]))).toBe('too-large')
  expect(code([[0.4, Number.NaN, 0.4]])).toBe('out-of-range')
  expect(code([[0.97, 0.97, 0.97]])).toBe('out-of-range')
  expect(code([[0.9, 0.1, 0.1]])).toBe('conflict')
  expect(code([[0.4, 0.4, 0.4]], 0.05)).toBe('out-of-range')
  expect(code([[0.5, 0.4, 0.35]])).toBe('ok')
})
