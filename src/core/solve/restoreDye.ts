import { assert, at } from '../base/assert.ts'
import { problem } from '../base/problem.ts'
import { fail, ok, type Result } from '../base/result.ts'
import type { WeightedColours } from '../census/weightedColours.ts'
import { SATURATION_WEIGHTS } from '../colour/grade.ts'
import { applyMatrix3, invertMatrix3, type Matrix3, multiplyMatrix3 } from '../colour/matrix3.ts'
import { mapTriple, type Triple } from '../colour/triple.ts'
import { baseColour, PRINT_BASE } from '../film/filmBase.ts'
import { signalToPrintDensity } from '../film/printDensity.ts'
import { evenColours } from './evenColours.ts'

export type DyeQuestion = {
  /** Of the faded print, R′G′B′ as scanned. */
  readonly colours: WeightedColours
  /** One to five places, R′G′B′ as scanned, that should be neutral; not clear film. */
  readonly neutrals: readonly Triple[]
  /** What the dye that kept best has kept, 0.1…1; BEST_KEPT where nothing is known of it. */
  readonly bestKept?: number
}

export type RestoredDye = {
  /** For the reel's base: densities of R, G, B → those of the unfaded print. */
  readonly dyes: Matrix3
  /** What cyan, magenta and yellow have kept, 0…1. */
  readonly kept: Triple
  /** How far a neutral place is from neutral at most, restored: as signal, before a base's list. */
  readonly residual: number
  /** Print density that the darkest hundredth of the picture begins at, as scanned and restored. */
  readonly darkest: { readonly before: number; readonly after: number }
}

/**
 * Density to R, G and B (rows) of as much cyan, magenta and yellow dye (columns) as has density 1
 * to its own colour. Side absorptions of a common colour print, from memory, no published source.
 */
const ABSORPTIONS: Matrix3 = [
  [1, 0.1, 0.03],
  [0.2, 1, 0.1],
  [0.1, 0.25, 1],
]

/**
 * In the dark cyan fades most, then yellow, and magenta hardly: common practice, no published
 * source. How much the last has lost cannot be told from a picture: all three more or less is one
 * contrast, a gamma of the grade. Nor does the darkest place tell it: in unfaded photographs its
 * density differs more from one to the next (1.9 to 7.2 in six) than fading changes it.
 */
export const BEST_KEPT = 0.94

const MOST_NEUTRALS = 5

/** A neutral place must have at least this density to R, G and B: from 0.91 of peak down. */
const LEAST_DENSITY = 0.1

/** A dye that kept less than this is gone: what it drew cannot be made from what is left. */
const LEAST_KEPT = 0.1

const DARKEST_PART = 0.01
const COLOURS = 4096

/** How much dye of each kind makes these densities. */
const DYE_AMOUNTS = invertMatrix3(ABSORPTIONS)

/** Density that the darkest part of even colours begins at, as luma. */
const darkestOf = (colours: Float64Array, base = PRINT_BASE): number => {
  const lumas = new Float64Array(colours.length / 3)
  const [kr, kg, kb] = SATURATION_WEIGHTS
  for (let i = 0; i < lumas.length; i++) {
    const scanned: Triple = [at(colours, i * 3), at(colours, i * 3 + 1), at(colours, i * 3 + 2)]
    const [r, g, b] = baseColour(scanned, base)
    lumas[i] = kr * r + kg * g + kb * b
  }
  return signalToPrintDensity(at(lumas.sort(), Math.floor(DARKEST_PART * lumas.length)))
}

const checkNeutrals = (neutrals: readonly Triple[]): Result<never> | undefined => {
  const refuse = (code: 'missing' | 'too-large' | 'out-of-range', says: string) =>
    fail(problem(code, says, { field: 'neutrals' }))
  if (neutrals.length === 0)
    return refuse('missing', 'No neutral place is given; pick one to five that should be grey.')
  if (neutrals.length > MOST_NEUTRALS)
    return refuse(
      'too-large',
      `${neutrals.length} places are given; give ${MOST_NEUTRALS} at most.`,
    )
  if (!neutrals.flat().every(Number.isFinite))
    return refuse('out-of-range', 'A place has a number that is not finite; pick again.')
  if (neutrals.some((place) => place.some((x) => signalToPrintDensity(x) < LEAST_DENSITY)))
    return refuse(
      'out-of-range',
      'A place is as good as clear film, where there is no dye to compare; pick a darker one.',
    )
  return undefined
}

/**
 * The 3×3 in the density domain that undoes fading: each dye has kept a part of itself everywhere
 * alike, so that densities are A·K·A⁻¹ times the unfaded ones, A the dyes' absorptions, K the parts
 * kept. At a place that should be neutral the unfaded dyes are in the proportion that makes grey:
 * what is there of each tells K but for one factor, which `bestKept` settles. Of several places the
 * mean of the logarithms counts.
 *
 * Refuses no place or more than five, clear film, places whose dyes no fading of a grey leaves, and
 * a dye that kept less than a tenth.
 */
export const restoreDye = ({
  colours,
  neutrals,
  bestKept = BEST_KEPT,
}: DyeQuestion): Result<RestoredDye> => {
  if (!colours.weights.some((weight) => weight > 0))
    return fail(
      problem('missing', 'The colours of the reel are not known; let it be measured first.'),
    )
  if (!(bestKept >= LEAST_KEPT && bestKept <= 1))
    return fail(
      problem('out-of-range', 'The best dye has kept between a tenth and all of itself.', {
        field: 'bestKept',
      }),
    )
  const refusal = checkNeutrals(neutrals)
  if (refusal) return refusal
  assert(DYE_AMOUNTS !== undefined, 'three dyes absorb differently')
  const grey = applyMatrix3(DYE_AMOUNTS, [1, 1, 1])
  const parts = neutrals.map((place) => {
    const amounts = applyMatrix3(DYE_AMOUNTS, mapTriple(place, signalToPrintDensity))
    return mapTriple(amounts, (amount, dye) => amount / grey[dye])
  })
  if (parts.flat().some((part) => part <= 0))
    return fail(
      problem(
        'conflict',
        'A place has none of one dye left, so that it was no grey that faded, or all is lost; pick another.',
        { field: 'neutrals' },
      ),
    )
  const mean = mapTriple(grey, (_, dye) => {
    const logs = parts.map((part) => Math.log(part[dye] / Math.max(...part)))
    return Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length)
  })
  const kept = mapTriple(mean, (part) => (bestKept * part) / Math.max(...mean))
  if (Math.min(...kept) < LEAST_KEPT)
    return fail(
      problem(
        'conflict',
        `One dye would have kept ${(Math.min(...kept) * 100).toFixed(0)} % of itself; below 10 % nothing can be restored. Pick other places.`,
        { field: 'neutrals' },
      ),
    )
  const amplify: Matrix3 = [
    [1 / kept[0], 0, 0],
    [0, 1 / kept[1], 0],
    [0, 0, 1 / kept[2]],
  ]
  const dyes = multiplyMatrix3(ABSORPTIONS, multiplyMatrix3(amplify, DYE_AMOUNTS))
  const base = { ...PRINT_BASE, dyes }
  const residuals = neutrals.map((place) => {
    const restored = baseColour(place, base)
    return Math.max(...restored) - Math.min(...restored)
  })
  const even = evenColours(colours, COLOURS)
  return ok({
    dyes,
    kept,
    residual: Math.max(...residuals),
    darkest: { before: darkestOf(even), after: darkestOf(even, base) },
  })
}
