import { applyMatrix3, IDENTITY_MATRIX3, type Matrix3, sameMatrix3 } from '../colour/matrix3.ts'
import { mapTriple, sameTriple, type Triple, triple } from '../colour/triple.ts'
import { applyProcess } from '../process/applyProcess.ts'
import { type ProcessList, sameProcessList } from '../process/processList.ts'
import { printDensityToSignal, signalToPrintDensity } from './printDensity.ts'
import {
  NEGATIVE_GAMMA,
  negativeDensityToSignal,
  signalToPrintingDensity,
} from './printingDensity.ts'

/** What a scan shows: a picture to be looked at, printing density, or a negative as it lies. */
export type ScanKind = 'print' | 'printing-density' | 'negative'

/** How a reel's scan becomes video, before any grade: the base stage. */
export type FilmBase = {
  readonly scan: ScanKind
  /** Density of a negative's clear film (its mask and fog), as the scan has it. */
  readonly clear: Triple
  /** Gamma of a negative's three layers: density over log10 of exposure, above 0. */
  readonly gamma: Triple
  /**
   * Dye restoration: densities of R, G, B become these rows' sums of them, which keeps no density
   * at none. Identity: no restoration.
   */
  readonly dyes: Matrix3
  /** Steps on the video signal after all that: a scanner's own table, or a look for the whole reel. */
  readonly list: ProcessList | null
}

export const PRINT_BASE: FilmBase = {
  scan: 'print',
  clear: triple(0),
  gamma: triple(NEGATIVE_GAMMA),
  dyes: IDENTITY_MATRIX3,
  list: null,
}

/** Whether the part of a base before its list leaves every colour as it is. */
export const isPlainFilm = ({ scan, dyes }: FilmBase): boolean =>
  scan === 'print' && sameMatrix3(dyes, IDENTITY_MATRIX3)

/** Whether a base leaves every colour as it is. */
export const isPlainBase = (base: FilmBase): boolean => isPlainFilm(base) && base.list === null

export const sameBase = (a: FilmBase, b: FilmBase): boolean =>
  a.scan === b.scan &&
  sameTriple(a.clear, b.clear) &&
  sameTriple(a.gamma, b.gamma) &&
  sameMatrix3(a.dyes, b.dyes) &&
  sameProcessList(a.list, b.list)

/**
 * The base stage's first curve of a channel: scanned signal → density over clear film (of a print,
 * over peak white). Monotone; finite for any finite signal.
 */
export const baseDensity = (signal: number, base: FilmBase, channel: 0 | 1 | 2): number =>
  base.scan === 'printing-density'
    ? signalToPrintingDensity(signal)
    : signalToPrintDensity(signal) - (base.scan === 'negative' ? base.clear[channel] : 0)

/**
 * The last curve of a channel before the base's list: density → video signal. Monotone and bounded
 * above.
 */
export const baseSignal = (density: number, base: FilmBase, channel: 0 | 1 | 2): number => {
  if (base.scan === 'print') return printDensityToSignal(density)
  const gamma = base.scan === 'negative' ? base.gamma[channel] : NEGATIVE_GAMMA
  return negativeDensityToSignal(density, gamma)
}

/** A scanned colour → video signal, before the base's list. */
const filmColour = (scanned: Triple, base: FilmBase): Triple => {
  if (isPlainFilm(base)) return scanned
  const { restored } = baseDensities(scanned, base)
  return mapTriple(restored, (density, c) => baseSignal(density, base, c))
}

/**
 * A scanned colour → the R′G′B′ that grades begin from: through scan kind and dyes, then through
 * the list. A plain base changes nothing.
 */
export const baseColour = (scanned: Triple, base: FilmBase): Triple => {
  const colour = filmColour(scanned, base)
  return base.list ? applyProcess(base.list, colour) : colour
}

/** Densities of a place to R, G, B: as scanned, over clear film or peak white, and restored. */
export type BaseDensities = { readonly scanned: Triple; readonly restored: Triple }

/** The densities that a base makes of a scanned colour on its way to video, before its list. */
export const baseDensities = (colour: Triple, base: FilmBase): BaseDensities => {
  const scanned = mapTriple(colour, (signal, c) => baseDensity(signal, base, c))
  return { scanned, restored: applyMatrix3(base.dyes, scanned) }
}
