import type { Cdl } from '../colour/cdl.ts'
import type { Matrix3 } from '../colour/matrix3.ts'
import type { Triple } from '../colour/triple.ts'

/** ASC CDL v1.2 forward or reverse, with its clamps to 0…1 or without. */
export type CdlStepStyle = 'forward' | 'reverse' | 'forward-no-clamp' | 'reverse-no-clamp'

export type CdlStep = { readonly kind: 'cdl'; readonly style: CdlStepStyle; readonly cdl: Cdl }

/** Rows times the colour, then `offset` is added. */
export type MatrixStep = {
  readonly kind: 'matrix'
  readonly rows: Matrix3
  readonly offset: Triple
}

/**
 * low in → low out and high in → high out, a straight line between and, without `clamps`, past
 * them. null: no limit at that end (just one end: the line has slope 1 and only clamps).
 */
export type RangeStep = {
  readonly kind: 'range'
  readonly low: readonly [from: number, to: number] | null
  readonly high: readonly [from: number, to: number] | null
  readonly clamps: boolean
}

/**
 * One curve for all channels, or one each: `values` at `points` even places of 0…1, channel by
 * channel within a place; lines between, ends held.
 */
export type CurveStep = {
  readonly kind: 'curve'
  readonly channels: 1 | 3
  readonly points: number
  readonly values: readonly number[]
}

/**
 * R′G′B′ at `points`³ even places of 0…1, blue fastest, red, green and blue of a place together;
 * ends held.
 */
export type CubeStep = {
  readonly kind: 'cube'
  readonly interpolation: 'trilinear' | 'tetrahedral'
  readonly points: number
  readonly values: readonly number[]
}

export type ProcessStep = CdlStep | MatrixStep | RangeStep | CurveStep | CubeStep

/**
 * Steps that a colour passes one after another, all on signal (0 black, 1 peak): what the Common
 * LUT Format calls a ProcessList, its bit depths already taken out.
 */
export type ProcessList = { readonly name: string; readonly steps: readonly ProcessStep[] }

const sameValue = (a: unknown, b: unknown): boolean => {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((value, i) => sameValue(value, b[i]))
  const [ofA, ofB] = [Object.entries(a), new Map(Object.entries(b))]
  return ofA.length === ofB.size && ofA.every(([name, value]) => sameValue(value, ofB.get(name)))
}

/**
 * By identity, then by what is in it. A list that crossed to a worker is another object each time,
 * and may hold a million numbers: nothing is made of them to compare.
 */
export const sameProcessList = (a: ProcessList | null, b: ProcessList | null): boolean =>
  sameValue(a, b)
