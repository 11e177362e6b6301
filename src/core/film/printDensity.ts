/** The signal of the densest place a scan tells apart: all below it is read as this dense. */
const LEAST_SIGNAL = 0.001

/** The power law between signal and displayed light: BT.1886 (2011) annex 1, black level 0. */
const DISPLAY_GAMMA = 2.4

/** No place of a print is brighter than ten times peak white, log10: keeps sums in bounds. */
const MOST_SIGNAL = 1

/**
 * Density of a place of a print, from the signal a scan made to be looked at gives it:
 * D = −log10(light), light = signal^2.4, that of BT.1886 with its black at 0. 0 at peak white, 7.2
 * at 0.001 and below: less than a 10-bit code, so that black stays black. Densities relative to
 * peak white: a choice of this project, since a scanner's own need its maker's tables. Of a print,
 * the exponent cancels out again; of a negative, it and the film's gamma are one factor.
 */
export const signalToPrintDensity = (signal: number): number =>
  -DISPLAY_GAMMA * Math.log10(Math.max(signal, LEAST_SIGNAL))

/** The inverse of `signalToPrintDensity` between its floor and a signal of 10. */
export const printDensityToSignal = (density: number): number =>
  10 ** Math.min(-density / DISPLAY_GAMMA, MOST_SIGNAL)
