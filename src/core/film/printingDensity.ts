import { linearToBt709 } from '../colour/bt709Oetf.ts'

/**
 * 10-bit printing density: black at code 95, white at 685, 0.002 of density a code, of a negative
 * of gamma 0.6 (constants 95, 685 and 300 = 0.6 / 0.002 as in colour-science's film-log transfer
 * functions; SMPTE RP 180 by name, not seen).
 */
const BLACK_CODE = 95
const WHITE_CODE = 685
const DENSITY_OF_CODE = 0.002
export const NEGATIVE_GAMMA = 0.6

/** Density of white over black: 1.18. */
const WHITE_DENSITY = (WHITE_CODE - BLACK_CODE) * DENSITY_OF_CODE

/**
 * No camera negative is denser over its clear film than this (common practice, no published
 * source); without an end, a black hole in a scan would become unbounded light.
 */
const DENSEST = 3

/** Printing density over code 95, from a 10-bit scan read at full range (1 is code 1023). */
export const signalToPrintingDensity = (signal: number): number =>
  (1023 * signal - BLACK_CODE) * DENSITY_OF_CODE

/** A negative's density over its clear film → light: 0 at none, 1 at 1.18, by film gamma `gamma`. */
export const negativeDensityToLight = (density: number, gamma: number): number => {
  const black = 10 ** (-WHITE_DENSITY / gamma)
  return (10 ** ((Math.min(density, DENSEST) - WHITE_DENSITY) / gamma) - black) / (1 - black)
}

/** The same as a video signal, by the transfer function of BT.709-6. */
export const negativeDensityToSignal = (density: number, gamma: number): number =>
  linearToBt709(negativeDensityToLight(density, gamma))
