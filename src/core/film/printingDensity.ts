import { linearToBt709 } from '../colour/bt709Oetf.ts'

/**
 * 10-bit printing density: black at code 95, white at 685, 0.002 of density a code, of a negative
 * of gamma 0.6 (constants 95, 685 and 300 = 0.6 / 0.002 as in colour-science's film-log transfer
 * functions; transfer 1 of SMPTE ST 268; SMPTE RP 180 by name, not seen).
 */
const BLACK_CODE = 95
const WHITE_CODE = 685
const DENSITY_OF_CODE = 0.002
export const NEGATIVE_GAMMA = 0.6

/** Exposure of white over black, log10: 590 / 300. At gamma 0.6 it is a density of 1.18. */
const WHITE_EXPOSURE = ((WHITE_CODE - BLACK_CODE) * DENSITY_OF_CODE) / NEGATIVE_GAMMA

/** Light that leaves no density, white being 1: what is taken off, so that clear film is black. */
const BLACK_LIGHT = 10 ** -WHITE_EXPOSURE

/**
 * No place of a camera negative is read as exposed by more than this over black, log10: density 2.4
 * at gamma 0.6, 108 times white (common practice, no published source). Without an end, a black
 * hole in a scan would become unbounded light.
 */
const MOST_EXPOSURE = 4

/** No scan has levels past this: keeps the sums of any number finite. */
const LARGEST_SIGNAL = 1e6

/**
 * Printing density over that of code 95, from the signal of a 10-bit scan whose code 1023 is 1.
 * It rises with the light of the scene: the print made from this negative is the lighter there.
 */
export const signalToPrintingDensity = (signal: number): number =>
  (1023 * Math.max(-LARGEST_SIGNAL, Math.min(signal, LARGEST_SIGNAL)) - BLACK_CODE) *
  DENSITY_OF_CODE

/**
 * A negative's density over its clear film → light of the scene: 0 at none, 1 where the exposure,
 * density / gamma in log10, is that of white. So layers of unlike gamma agree on every grey.
 */
export const negativeDensityToLight = (density: number, gamma: number): number =>
  (10 ** (Math.min(density / gamma, MOST_EXPOSURE) - WHITE_EXPOSURE) - BLACK_LIGHT) /
  (1 - BLACK_LIGHT)

/**
 * The same as a video signal: scene light by the camera's transfer function of BT.709-6, so that a
 * display shows it as it shows a camera's picture (18 % grey is 0.41 of peak).
 */
export const negativeDensityToSignal = (density: number, gamma: number): number =>
  linearToBt709(negativeDensityToLight(density, gamma))
