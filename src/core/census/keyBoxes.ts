import { codeScale } from '../colour/codeValues.ts'
import { applyMatrix3 } from '../colour/matrix3.ts'
import type { Triple } from '../colour/triple.ts'
import { yCbCrToRgbFactors } from '../colour/yCbCr.ts'
import {
  baseColour,
  baseDensity,
  baseSignal,
  type FilmBase,
  isPlainBase,
  isPlainFilm,
} from '../film/filmBase.ts'
import type { Coding } from '../picture/planes.ts'
import { boundProcess } from '../process/boundProcess.ts'
import type { LevelBox } from '../process/levelBox.ts'
import { type CensusShape, componentsOf, isExactShape } from './censusShape.ts'

/**
 * The R′G′B′ before the grade of a key's box, by the arithmetic of `decodePlanes`: one colour where
 * the shape is exact.
 */
export const keyBoxes = (shape: CensusShape, coding: Coding): ((key: number) => LevelBox) => {
  const { black, peak, chromaZero, chromaHalf } = codeScale(shape.depth, shape.range)
  const scale = 1 / (peak - black)
  const chromaScale = 1 / (2 * chromaHalf)
  const firstSpan = 2 ** shape.firstDrop - 1
  const otherSpan = 2 ** shape.otherDrop - 1
  const luma = (code: number) => (code - black) * scale
  const chroma = (parts: number) => (parts / shape.parts - chromaZero) * chromaScale
  const { crToR, cbToB, cbToG, crToG } = yCbCrToRgbFactors(coding.matrix)
  const scanned = (key: number): LevelBox => {
    const [first, second, third] = componentsOf(shape, key)
    if (shape.isRgb)
      return {
        low: [luma(first), luma(second), luma(third)],
        high: [luma(first + firstSpan), luma(second + otherSpan), luma(third + otherSpan)],
      }
    const y = [luma(first), luma(first + firstSpan)] as const
    const cb = [chroma(second), chroma(second + otherSpan)] as const
    const cr = [chroma(third), chroma(third + otherSpan)] as const
    return {
      low: [y[0] + crToR * cr[0], y[0] + cbToG * cb[1] + crToG * cr[1], y[0] + cbToB * cb[0]],
      high: [y[1] + crToR * cr[1], y[1] + cbToG * cb[0] + crToG * cr[0], y[1] + cbToB * cb[1]],
    }
  }
  const { base } = coding
  if (!base || isPlainBase(base)) return scanned
  if (isExactShape(shape))
    return (key) => {
      const colour = baseColour(scanned(key).low, base)
      return { low: colour, high: colour }
    }
  const film = isPlainFilm(base) ? scanned : (key: number) => filmBox(scanned(key), base)
  const bound = base.list ? boundProcess(base.list) : undefined
  return bound ? (key) => bound(film(key)) : film
}

const ordered = (a: number, b: number): readonly [number, number] => (a <= b ? [a, b] : [b, a])

/** A box through the base before its list: its curves are monotone, its matrix has known signs. */
const filmBox = ({ low, high }: LevelBox, base: FilmBase): LevelBox => {
  const channels = [0, 1, 2] as const
  const densities = channels.map((c) =>
    ordered(baseDensity(low[c], base, c), baseDensity(high[c], base, c)),
  )
  const corner = (row: Triple, end: 0 | 1): Triple =>
    channels.map((c) => densities[c]?.[row[c] >= 0 ? end : 1 - end] ?? 0) as unknown as Triple
  const mixed = (end: 0 | 1): readonly number[] =>
    base.dyes.map((row, c) => applyMatrix3(base.dyes, corner(row, end))[c as 0 | 1 | 2])
  const [least, most] = [mixed(0), mixed(1)]
  const ends = channels.map((c) =>
    ordered(baseSignal(least[c] ?? 0, base, c), baseSignal(most[c] ?? 0, base, c)),
  )
  return {
    low: ends.map(([a]) => a) as unknown as Triple,
    high: ends.map(([, b]) => b) as unknown as Triple,
  }
}
