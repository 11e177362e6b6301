/** The signal of the densest place a scan tells apart: all below it is read as this dense. */
const LEAST_SIGNAL = 0.001

/** The power law between signal and displayed light: BT.1886 (2011) annex 1, black level 0. */
const DISPLAY_GAMMA = 2.4

/**
 * Density of a place of a print, from the signal a scan made to be looked at gives it:
 * D = −log10(light), light = signal^2.4, that of BT.1886 with its black at 0. 0 at peak white, 7.2
 * at 0.001 and below. A choice of this project: a scanner's own densities need its maker's tables.
 */
export const signalToPrintDensity = (signal: number): number =>
  -DISPLAY_GAMMA * Math.log10(Math.max(signal, LEAST_SIGNAL))

/** The inverse of `signalToPrintDensity` above its floor. */
export const printDensityToSignal = (density: number): number => 10 ** (-density / DISPLAY_GAMMA)
