import type { WeightedColours } from '../census/weightedColours.ts'
import { LUMA_WEIGHTS } from '../colour/lumaWeights.ts'
import type { MatrixName } from '../picture/planes.ts'
import { compositePeaks, U_FACTOR, V_FACTOR } from '../tolerance/compositePeaks.ts'
import { levelLimits } from '../tolerance/levelLimits.ts'
import type { ToleranceProfile } from '../tolerance/profile.ts'
import { fillSlopes, gradeInto, gradeSlopes } from './gradeSlopes.ts'
import { NUMBERS } from './gradeVector.ts'

/** How far inside the limits the colours are to come, as signal: below the low ones and the high. */
export type Margins = { readonly low: number; readonly high: number }

/** Straight limits: how far each is passed, the slopes of that, and the weight of its square. */
type LimitRows = {
  readonly past: readonly number[]
  /** `NUMBERS` slopes each. */
  readonly slopes: readonly number[]
  readonly parts: readonly number[]
}

/** What lies outside a profile, past the area that may: mean squares of excesses. */
export type ExcessCost = {
  readonly at: (vector: Float64Array, margins: Margins) => number
  /** The same as limits that are straight in the numbers of the grade, near a grade. */
  readonly rowsAt: (vector: Float64Array, margins: Margins) => LimitRows
  /** The same of the colours alone that come within `margins` of a limit: quicker near a grade. */
  readonly near: (vector: Float64Array, margins: Margins) => ExcessCost
}

/** Figures of a colour: R′, G′, B′, Y′, lowest and highest composite peak. */
const FIGURES = 6

/** Limits farther away than this are not told as rows: a step passes none of them. */
const REACH = 0.06

/** Cells of a channel from black to peak. */
const CELLS = 16

/**
 * The excess of weighted colours. The worst of them, as many as the profile's area holds, count
 * nothing: they may stay out. A colour of few pixels counts half by them and half as one of all
 * colours, so that a single pixel that may not be out is not overlooked.
 */
export const excessCost = (
  { colours, weights }: WeightedColours,
  matrix: MatrixName,
  profile: ToleranceProfile,
  total = weights.reduce((sum, weight) => sum + weight, 0),
  all = weights.length,
): ExcessCost => {
  const count = weights.length
  const [kr, kg, kb] = LUMA_WEIGHTS[matrix]
  const [cr, cg, cb] = LUMA_WEIGHTS.bt601
  const limits = levelLimits(profile)
  const hasComposite = profile.composite !== null
  const figures = new Float64Array(FIGURES)
  const used = hasComposite ? FIGURES : 4
  const squares = new Float64Array(count)
  const counted = new Float64Array(count)
  const levels = new Float64Array(count * 3)
  let filled: { vector: Float64Array; margins: Margins } | undefined
  const graded = gradeSlopes()
  const row = new Float64Array(NUMBERS)

  /** Colours alike before the grade: their limits run nearly alike, and the worst stands for them. */
  const cellOf = (i: number): number => {
    let cell = 0
    for (let c = 0; c < 3; c++) {
      const level = Math.floor((colours[i * 3 + c] as number) * CELLS)
      cell = cell * 2 * CELLS + Math.min(Math.max(level + CELLS / 2, 0), 2 * CELLS - 1)
    }
    return cell
  }

  const lowOf = (f: number) => (f < 3 ? limits.rgb : f === 3 ? limits.luma : limits.composite)[0]
  const highOf = (f: number) => (f < 3 ? limits.rgb : f === 3 ? limits.luma : limits.composite)[1]

  const fillFigures = (out: Float64Array): void => {
    const [r, g, b] = [out[0] as number, out[1] as number, out[2] as number]
    figures.set(out)
    figures[3] = kr * r + kg * g + kb * b
    if (hasComposite) figures.set(compositePeaks(r, g, b), 4)
  }

  /** The sum of the squares of how far each figure is past its limits. */
  const squareOf = (out: Float64Array, { low, high }: Margins): number => {
    fillFigures(out)
    let sum = 0
    for (let f = 0; f < used; f++) {
      const value = figures[f] as number
      const by = Math.max(value - highOf(f) + high, lowOf(f) + low - value, 0)
      sum += by * by
    }
    return sum
  }

  /**
   * What part of each colour counts, into `counted`: the worst, up to the area, do not. Returns the
   * sum of what counts.
   */
  const fillCounted = (vector: Float64Array, margins: Margins): number => {
    const outside: number[] = []
    filled = { vector, margins }
    for (let i = 0; i < count; i++) {
      gradeInto(graded.out, colours, i * 3, vector)
      levels.set(graded.out, i * 3)
      const square = squareOf(graded.out, margins)
      squares[i] = square
      counted[i] = ((weights[i] as number) / total + 1 / all) / 2
      if (square > 0) outside.push(i)
    }
    let free = profile.area * total
    if (free > 0) outside.sort((a, b) => (squares[b] as number) - (squares[a] as number))
    let sum = 0
    for (const i of outside) {
      const weight = weights[i] as number
      const spared = Math.min(free, weight)
      free -= spared
      counted[i] = (counted[i] as number) * (1 - spared / weight)
      sum += (counted[i] as number) * (squares[i] as number)
    }
    return sum
  }

  const fillRow = (figure: number): void => {
    const { out, slopes } = graded
    const sumOf = (r: number, g: number, b: number): void => {
      for (let p = 0; p < NUMBERS; p++)
        row[p] =
          r * (slopes[p] as number) +
          g * (slopes[NUMBERS + p] as number) +
          b * (slopes[2 * NUMBERS + p] as number)
    }
    if (figure < 3) sumOf(figure === 0 ? 1 : 0, figure === 1 ? 1 : 0, figure === 2 ? 1 : 0)
    else if (figure === 3) sumOf(kr, kg, kb)
    else {
      const [r, g, b] = [out[0] as number, out[1] as number, out[2] as number]
      const y = cr * r + cg * g + cb * b
      const chroma = Math.max(Math.hypot(U_FACTOR * (b - y), V_FACTOR * (r - y)), 1e-9)
      const u = ((figure === 4 ? -1 : 1) * U_FACTOR ** 2 * (b - y)) / chroma
      const v = ((figure === 4 ? -1 : 1) * V_FACTOR ** 2 * (r - y)) / chroma
      sumOf(cr + v - (u + v) * cr, cg - (u + v) * cg, cb + u - (u + v) * cb)
    }
  }

  return {
    at: fillCounted,
    rowsAt: (vector, margins) => {
      // A step that was taken is asked for its sum first, and then for its rows.
      if (filled?.margins !== margins || !filled.vector.every((value, p) => value === vector[p]))
        fillCounted(vector, margins)
      const worst = new Map<number, { place: number; past: number; part: number }>()
      for (let i = 0; i < count; i++) {
        const part = counted[i] as number
        if (part === 0) continue
        graded.out.set(levels.subarray(i * 3, i * 3 + 3))
        fillFigures(graded.out)
        for (let side = 0; side < 2 * used; side++) {
          const f = side >> 1
          const value = figures[f] as number
          const past = side & 1 ? value - highOf(f) + margins.high : lowOf(f) + margins.low - value
          if (!(past > -REACH)) continue
          const key = cellOf(i) * 2 * FIGURES + side
          const before = worst.get(key)
          if (!before) worst.set(key, { place: i, past, part })
          else {
            before.part += part
            if (past <= before.past) continue
            before.past = past
            before.place = i
          }
        }
      }
      const rows = { past: [] as number[], slopes: [] as number[], parts: [] as number[] }
      for (const [key, { place, past, part }] of worst) {
        const side = key % (2 * FIGURES)
        fillSlopes(graded, colours, place * 3, vector)
        fillRow(side >> 1)
        const sign = side & 1 ? 1 : -1
        rows.past.push(past)
        for (let p = 0; p < NUMBERS; p++) rows.slopes.push(sign * (row[p] as number))
        rows.parts.push(part)
      }
      return rows
    },
    near: (vector, margins) => {
      const places: number[] = []
      for (let i = 0; i < count; i++) {
        gradeInto(graded.out, colours, i * 3, vector)
        if (squareOf(graded.out, margins) > 0) places.push(i)
      }
      const some = {
        colours: Float64Array.from(places.flatMap((i) => [...colours.subarray(i * 3, i * 3 + 3)])),
        weights: Float64Array.from(places, (i) => weights[i] as number),
      }
      return excessCost(some, matrix, profile, total, all)
    },
  }
}
