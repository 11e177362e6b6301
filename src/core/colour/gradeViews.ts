import { SATURATION_WEIGHTS } from './grade.ts'
import { mapTriple, type Triple } from './triple.ts'

/**
 * The *all* view of a triple: its luma-weighted mean. *Tint* is what is left of each channel.
 * Neither is stored: both are views of the one triple.
 */
export const allOf = (t: Triple): number => {
  const [wr, wg, wb] = SATURATION_WEIGHTS
  return wr * t[0] + wg * t[1] + wb * t[2]
}

/** Ten decimals: finer than any code value can show, and free of the noise of adding floats. */
const tidy = (value: number): number => Number(value.toFixed(10))

/** The triple whose *all* is `all`, each channel keeping its tint (to ten decimals). */
export const withAll = (t: Triple, all: number): Triple => {
  const shift = all - allOf(t)
  return mapTriple(t, (value) => tidy(value + shift))
}

/** The triple with one channel set to a value. */
export const withChannel = (t: Triple, channel: 0 | 1 | 2, value: number): Triple =>
  mapTriple(t, (old, c) => (c === channel ? value : old))
