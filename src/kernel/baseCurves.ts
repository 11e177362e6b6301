import { IDENTITY_MATRIX3, sameMatrix3 } from '../core/colour/matrix3.ts'
import { baseDensity, baseSignal, type FilmBase, sameBase } from '../core/film/filmBase.ts'
import type { KernelMemory } from './kernelMemory.ts'
import type { KernelModule, Settings } from './kernelModule.ts'

/** Levels and densities a curve is laid out for, and pieces to 1 (see `assembly/curve.ts`). */
const SIGNALS = { from: -1, to: 2.2, piecesPerUnit: 4000 }
const DENSITIES = { from: -4, to: 16, piecesPerUnit: 256 }

type Span = typeof SIGNALS

const HEAD = 4
const pieces = ({ from, to, piecesPerUnit }: Span): number =>
  Math.round((to - from) * piecesPerUnit)
const curveLength = (span: Span): number => HEAD + 2 * pieces(span)

/** The chords of `curve` over equal pieces. Corners of the base's curves lie between pieces. */
const fillCurve = (table: Float32Array, span: Span, curve: (x: number) => number): void => {
  const { from, piecesPerUnit } = span
  const count = pieces(span)
  table.set([from, piecesPerUnit, count - 1, 0])
  for (let i = 0; i < count; i++) {
    const x = from + i / piecesPerUnit
    const start = curve(x)
    const slope = (curve(from + (i + 1) / piecesPerUnit) - start) * piecesPerUnit
    table[HEAD + 2 * i] = start - slope * x
    table[HEAD + 2 * i + 1] = slope
  }
}

/** The curves of the last base before its list, at fixed addresses, made when they change. */
export type BaseCurves = {
  readonly settings: (base: FilmBase) => Settings
}

export const baseCurves = (module: KernelModule, memory: KernelMemory): BaseCurves => {
  const channels = [0, 1, 2] as const
  const firsts = channels.map(() => memory.take(curveLength(SIGNALS) * 4))
  const lasts = channels.map(() => memory.take(curveLength(DENSITIES) * 4))
  memory.settle()
  let held: FilmBase | undefined
  const fill = (base: FilmBase, hasDyes: boolean): void => {
    const { buffer } = module.memory
    for (const c of channels) {
      const first = new Float32Array(buffer, firsts[c], curveLength(SIGNALS))
      const last = new Float32Array(buffer, lasts[c], curveLength(DENSITIES))
      const density = (x: number) => baseDensity(x, base, c)
      fillCurve(first, SIGNALS, hasDyes ? density : (x) => baseSignal(density(x), base, c))
      if (hasDyes) fillCurve(last, DENSITIES, (d) => baseSignal(d, base, c))
    }
    held = base
  }
  return {
    settings: (base) => {
      const hasDyes = !sameMatrix3(base.dyes, IDENTITY_MATRIX3)
      const film = { ...base, list: null }
      if (!held || !sameBase(held, film)) fill(film, hasDyes)
      const [[dyeRR, dyeRG, dyeRB], [dyeGR, dyeGG, dyeGB], [dyeBR, dyeBG, dyeBB]] = base.dyes
      const [curveOfR, curveOfG, curveOfB] = firsts as [number, number, number]
      const [lastCurveOfR, lastCurveOfG, lastCurveOfB] = lasts as [number, number, number]
      return {
        hasDyes,
        ...{ curveOfR, curveOfG, curveOfB, lastCurveOfR, lastCurveOfG, lastCurveOfB },
        ...{ dyeRR, dyeRG, dyeRB, dyeGR, dyeGG, dyeGB, dyeBR, dyeBG, dyeBB },
      }
    },
  }
}
