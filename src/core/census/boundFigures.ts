import type { CensusQuestion } from './censusQuestion.ts'
import { PIECE, PIECES } from './gradeCurves.ts'

/** Bounds of the figures of colours or boxes of them, under one grade. */
export type FigureBounds = {
  /**
   * The figures last bounded: R′, G′, B′, Y′ and, if asked for, the lowest and the highest peak of
   * the composite signal.
   */
  readonly least: Float64Array
  readonly most: Float64Array
  /** Bounds one colour: three levels at `place`. */
  readonly ofColour: (levels: Float32Array, place: number) => void
  /** Bounds a box: low R′, G′, B′ and high R′, G′, B′ at `place`. */
  readonly ofBox: (levels: Float32Array, place: number) => void
}

/** The grade must not fall in any channel. */
export const boundFigures = ({ curves, weights, hasComposite }: CensusQuestion): FigureBounds => {
  const { starts, piecesPerUnit, pieces } = curves
  const figures = weights.length / 3
  const least = new Float64Array(figures)
  const most = new Float64Array(figures)
  /** Luma, U, V at 4, 5, 6 become the lowest peak at 4 and the highest at 5. */
  const findPeaks = (): void => {
    const [y0, y1] = [least[4] as number, most[4] as number]
    const farthest = (f: number) => Math.max(-(least[f] as number), most[f] as number)
    const nearest = (f: number) => Math.max(0, least[f] as number, -(most[f] as number))
    const weakest = Math.hypot(nearest(5), nearest(6))
    const strongest = Math.hypot(farthest(5), farthest(6))
    least[4] = y0 - strongest
    most[4] = y1 - weakest
    least[5] = y0 + weakest
    most[5] = y1 + strongest
  }
  /** The graded R′, G′, B′ lie between these. */
  const low = new Float64Array(3)
  const high = new Float64Array(3)
  const grading = (level: number, c: number, isLow: boolean, isHigh: boolean): void => {
    const place = (level - (starts[c] as number)) * (piecesPerUnit[c] as number)
    const piece = place < 0 ? 0 : place >= PIECES ? PIECES - 1 : place | 0
    const at = (c * PIECES + piece) * PIECE
    const rise = (place - piece) * (pieces[at + 2] as number)
    if (isLow) low[c] = (pieces[at] as number) + rise
    if (isHigh) high[c] = (pieces[at + 1] as number) + rise
  }
  const combine = (): void => {
    const [r0, g0, b0] = [low[0] as number, low[1] as number, low[2] as number]
    const [r1, g1, b1] = [high[0] as number, high[1] as number, high[2] as number]
    for (let f = 0; f < figures; f++) {
      const wr = weights[f * 3] as number
      const wg = weights[f * 3 + 1] as number
      const wb = weights[f * 3 + 2] as number
      least[f] = wr * (wr < 0 ? r1 : r0) + wg * (wg < 0 ? g1 : g0) + wb * (wb < 0 ? b1 : b0)
      most[f] = wr * (wr < 0 ? r0 : r1) + wg * (wg < 0 ? g0 : g1) + wb * (wb < 0 ? b0 : b1)
    }
    if (hasComposite) findPeaks()
  }
  const ofColour = (levels: Float32Array, place: number): void => {
    for (let c = 0; c < 3; c++) grading(levels[place + c] as number, c, true, true)
    combine()
  }
  const ofBox = (levels: Float32Array, place: number): void => {
    for (let c = 0; c < 3; c++) {
      grading(levels[place + c] as number, c, true, false)
      grading(levels[place + 3 + c] as number, c, false, true)
    }
    combine()
  }
  return { least, most, ofColour, ofBox }
}
