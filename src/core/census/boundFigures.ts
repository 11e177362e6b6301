import type { Grade } from '../colour/grade.ts'
import type { MatrixName } from '../picture/planes.ts'
import { FIGURES, figureWeights } from './figureWeights.ts'
import { gradeCurves, PIECES } from './gradeCurves.ts'

/** Bounds of the graded R′, G′, B′, Y′ of colours or boxes of them, under one grade. */
export type FigureBounds = {
  /** The figures last bounded. */
  readonly least: Float64Array
  readonly most: Float64Array
  /** Bounds one colour: three levels at `place`. */
  readonly ofColour: (levels: Float32Array, place: number) => void
  /** Bounds a box: low R′, G′, B′ and high R′, G′, B′ at `place`. */
  readonly ofBox: (levels: Float32Array, place: number) => void
}

/** `range`: the box around all that will be bounded. The grade must not fall in any channel. */
export const boundFigures = (
  grade: Grade,
  matrix: MatrixName,
  range: Float32Array,
): FigureBounds => {
  const { starts, piecesPerUnit, levels: curve, errors } = gradeCurves(grade, range)
  const weights = figureWeights(grade.saturation, matrix)
  const least = new Float64Array(FIGURES)
  const most = new Float64Array(FIGURES)
  /** Levels graded, and how far each may be off: low R′, G′, B′, high R′, G′, B′. */
  const graded = new Float64Array(6)
  const off = new Float64Array(6)
  /** Puts the graded level of channel `c` at `to`. */
  const grading = (level: number, c: number, to: number): void => {
    const place = (level - (starts[c] as number)) * (piecesPerUnit[c] as number)
    const piece = place < 0 ? 0 : place >= PIECES ? PIECES - 1 : place | 0
    const at = c * (PIECES + 1) + piece
    const start = curve[at] as number
    graded[to] = start + (place - piece) * ((curve[at + 1] as number) - start)
    off[to] = errors[c * PIECES + piece] as number
  }
  const ofColour = (levels: Float32Array, place: number): void => {
    grading(levels[place] as number, 0, 0)
    grading(levels[place + 1] as number, 1, 1)
    grading(levels[place + 2] as number, 2, 2)
    const r = graded[0] as number
    const g = graded[1] as number
    const b = graded[2] as number
    const offR = off[0] as number
    const offG = off[1] as number
    const offB = off[2] as number
    for (let f = 0; f < FIGURES; f++) {
      const wr = weights[f * 3] as number
      const wg = weights[f * 3 + 1] as number
      const wb = weights[f * 3 + 2] as number
      const figure = wr * r + wg * g + wb * b
      const farthest = Math.abs(wr) * offR + Math.abs(wg) * offG + Math.abs(wb) * offB
      least[f] = figure - farthest
      most[f] = figure + farthest
    }
  }
  const ofBox = (levels: Float32Array, place: number): void => {
    for (let i = 0; i < 6; i++) grading(levels[place + i] as number, i < 3 ? i : i - 3, i)
    const lowR = (graded[0] as number) - (off[0] as number)
    const lowG = (graded[1] as number) - (off[1] as number)
    const lowB = (graded[2] as number) - (off[2] as number)
    const highR = (graded[3] as number) + (off[3] as number)
    const highG = (graded[4] as number) + (off[4] as number)
    const highB = (graded[5] as number) + (off[5] as number)
    for (let f = 0; f < FIGURES; f++) {
      const wr = weights[f * 3] as number
      const wg = weights[f * 3 + 1] as number
      const wb = weights[f * 3 + 2] as number
      least[f] =
        (wr < 0 ? wr * highR : wr * lowR) +
        (wg < 0 ? wg * highG : wg * lowG) +
        (wb < 0 ? wb * highB : wb * lowB)
      most[f] =
        (wr < 0 ? wr * lowR : wr * highR) +
        (wg < 0 ? wg * lowG : wg * highG) +
        (wb < 0 ? wb * lowB : wb * highB)
    }
  }
  return { least, most, ofColour, ofBox }
}
