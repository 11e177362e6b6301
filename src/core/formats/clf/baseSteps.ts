import type { Matrix3 } from '../../colour/matrix3.ts'
import { mapTriple, type Triple, triple } from '../../colour/triple.ts'
import {
  baseDensity,
  baseSignal,
  type FilmBase,
  isPlainFilm,
  PRINT_BASE,
} from '../../film/filmBase.ts'
import { NEGATIVE_GAMMA } from '../../film/printingDensity.ts'
import type { CurveStep, MatrixStep, ProcessStep, RangeStep } from '../../process/processList.ts'

/** A step of a process list, and what it does in a sentence. */
export type SaidStep = { readonly says: string; readonly step: ProcessStep }

/**
 * The signals the density curve is tabled for. Below 0.001 all is one density (`printDensity.ts`),
 * and no colour of a 10-bit scan, out to its last codes, has a channel above 2.17.
 */
const LEAST = 0.001
const SPAN = 2.2

/** The signal span is halved towards black this often; each part gets as many places. */
const HALVINGS = 11

/**
 * Places a part. 128 make an error of at most 8e-6 in density, of which the matrix may make more:
 * past four times as much there are four times as many places, and a sixteenth of the error.
 */
const PLACES = 128
const MANY_PLACES = 512
const MUCH = 4

const CURVE_POINTS = 2049

/** Eight digits: more than float32 has, and half the length of a double. */
const short = (value: number): number => Number(value.toPrecision(8))

const curve = (points: number, valueAt: (part: number) => number): CurveStep => ({
  kind: 'curve',
  channels: 1,
  points,
  values: Array.from({ length: points }, (_, i) => short(valueAt(i / (points - 1)))),
})

const PARTS = HALVINGS + 1

/** Part of the span 0…1 → part of the density table: straight within each halving. */
const spread = (part: number): number => {
  const place = part * 2 ** HALVINGS
  if (place < 1) return place / PARTS
  const halving = Math.min(Math.floor(Math.log2(place)), HALVINGS - 1)
  return (halving + place / 2 ** halving) / PARTS
}

/** The inverse of `spread`. */
const gathered = (part: number): number => {
  const place = part * PARTS
  const halving = Math.min(Math.floor(place), HALVINGS) - 1
  return (halving < 0 ? place : 2 ** halving * (place - halving)) / 2 ** HALVINGS
}

/** Scanned signal → density of a print, as a table with places crowded towards black. */
const densitySteps = (isFine: boolean): readonly SaidStep[] => {
  const range: RangeStep = {
    kind: 'range',
    low: [LEAST, 0],
    high: [LEAST + SPAN, 1],
    clamps: false,
  }
  const points = PARTS * (isFine ? MANY_PLACES : PLACES) + 1
  return [
    { says: `Scanned signal ${LEAST} to ${LEAST + SPAN} over the places of a table.`, step: range },
    { says: 'More places towards black.', step: curve(2 ** HALVINGS + 1, spread) },
    {
      says: 'Density over peak white.',
      step: curve(points, (part) => baseDensity(LEAST + SPAN * gathered(part), PRINT_BASE, 0)),
    },
  ]
}

/** The last curve's domain: density of a print, or of a negative over its layers' gamma. */
type Domain = readonly [from: number, to: number]

/** From ten times peak white, where the curve ends, to where less than a hundred-thousandth is left. */
const PRINT_DOMAIN: Domain = [-2.4, 12]

/** Exposure over black, log10: to where the curve ends (`MOST_EXPOSURE`). */
const EXPOSURE_DOMAIN: Domain = [-4, 4]

/** The last curve; past its open end the signal is what the curve goes towards. */
const signalCurve = (base: FilmBase, [from, to]: Domain): CurveStep => {
  const isPrint = base.scan === 'print'
  const last: FilmBase = { ...base, gamma: triple(1) }
  const scale = base.scan === 'printing-density' ? NEGATIVE_GAMMA : 1
  return curve(CURVE_POINTS, (part) => {
    const at = from + (to - from) * part
    if (isPrint) return part === 1 ? 0 : baseSignal(at, last, 0)
    return baseSignal(part === 0 ? Number.NEGATIVE_INFINITY : at * scale, last, 0)
  })
}

/** Densities of the scan → places of the last curve, dye restoration and clear film within. */
const densityMatrix = (base: FilmBase, [from, to]: Domain): MatrixStep => {
  const isDensity = base.scan === 'printing-density'
  const perSignal = isDensity ? baseDensity(1, base, 0) - baseDensity(0, base, 0) : 1
  const atZero = isDensity
    ? triple(baseDensity(0, base, 0))
    : mapTriple(base.clear, (clear) => (base.scan === 'negative' ? -clear : 0))
  const gammas = {
    print: triple(1),
    'printing-density': triple(NEGATIVE_GAMMA),
    negative: base.gamma,
  }
  const scale = mapTriple(gammas[base.scan], (gamma) => 1 / (gamma * (to - from)))
  const row = (c: 0 | 1 | 2): Triple =>
    mapTriple(base.dyes[c], (weight) => weight * perSignal * scale[c])
  const offset = mapTriple(scale, (each, c) => {
    const [r, g, b] = base.dyes[c]
    return (r * atZero[0] + g * atZero[1] + b * atZero[2]) * each - from / (to - from)
  })
  return { kind: 'matrix', rows: [row(0), row(1), row(2)], offset }
}

const largestSum = (rows: Matrix3, gamma: Triple): number =>
  Math.max(...rows.map((row, c) => row.reduce((sum, w) => sum + Math.abs(w), 0) / (gamma[c] ?? 1)))

/**
 * A base, without its own list, as steps of a process list: for the colours of any scan within a
 * quarter of a 10-bit code of `baseColour`. None where it leaves colours as they are.
 */
export const baseSteps = (base: FilmBase): readonly SaidStep[] => {
  if (isPlainFilm(base)) return []
  const domain = base.scan === 'print' ? PRINT_DOMAIN : EXPOSURE_DOMAIN
  const gamma = base.scan === 'negative' ? base.gamma : triple(1)
  const isFine = largestSum(base.dyes, gamma) > MUCH
  return [
    ...(base.scan === 'printing-density' ? [] : densitySteps(isFine)),
    { says: 'Densities, with the dye restoration.', step: densityMatrix(base, domain) },
    { says: 'Video signal.', step: signalCurve(base, domain) },
  ]
}
