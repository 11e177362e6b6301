import { SATURATION_WEIGHTS } from './grade.ts'
import { mapTriple, type Triple } from './triple.ts'
import { rgbToYCbCr, yCbCrToRgb } from './yCbCr.ts'

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

/** A tint as it stands on the plane of BT.709 colour differences; 0, 0 is none. */
export type Tint = { readonly cb: number; readonly cr: number }

/** Where a triple's tint lies: its Cb and Cr (BT.709-6 §3.3), whatever its *all*. */
export const tintOf = (t: Triple): Tint => {
  const [, cb, cr] = rgbToYCbCr(t, 'bt709')
  return { cb: tidy(cb), cr: tidy(cr) }
}

/** The triple with this tint, its *all* kept: luma of neutral colours does not move. */
export const withTint = (t: Triple, { cb, cr }: Tint): Triple =>
  mapTriple(yCbCrToRgb([allOf(t), cb, cr], 'bt709'), tidy)
