import type { RangeName } from '../picture/planes.ts'

/** Black and peak of R′, G′, B′ and Y′, and zero and half-swing of Cb and Cr, in code values. */
export type CodeScale = {
  readonly black: number
  readonly peak: number
  readonly chromaZero: number
  /** Codes from Cb = 0 to Cb = 0.5. */
  readonly chromaHalf: number
  readonly largest: number
}

/**
 * The code scale of a bit depth (8…16).
 * Narrow: D = INT((219·E + 16)·2^(n−8)), chroma INT((224·E + 128)·2^(n−8)): BT.709-6 §4.6,
 * BT.601-7 §2.5.4, BT.2020-2 table 5. Full: D = INT((2^n−1)·E), chroma + 2^(n−1): BT.2100-2
 * table 9 (from memory).
 */
export const codeScale = (depth: number, range: RangeName): CodeScale => {
  const largest = 2 ** depth - 1
  const step = 2 ** (depth - 8)
  return range === 'narrow'
    ? {
        black: 16 * step,
        peak: 235 * step,
        chromaZero: 128 * step,
        chromaHalf: 112 * step,
        largest,
      }
    : { black: 0, peak: largest, chromaZero: 2 ** (depth - 1), chromaHalf: largest / 2, largest }
}

/**
 * INT of the Recommendations (halves round up: BT.709-6 §4.6 note), kept inside what the bits can
 * hold; what is not a number becomes `none`.
 */
const toCode = (value: number, largest: number, none: number): number =>
  value > 0 ? Math.min(largest, Math.floor(value + 0.5)) : value <= 0 ? 0 : none

/** Signal (0 black, 1 peak) → a code of `depth` bits, rounded and kept inside; no number → black. */
export const signalToCode = (signal: number, depth: number, range: RangeName): number => {
  const { black, peak, largest } = codeScale(depth, range)
  return toCode(black + signal * (peak - black), largest, black)
}

/** Colour difference (−0.5…0.5) → a code, rounded and kept inside; no number → no colour. */
export const chromaToCode = (chroma: number, depth: number, range: RangeName): number => {
  const { chromaZero, chromaHalf, largest } = codeScale(depth, range)
  return toCode(chromaZero + chroma * 2 * chromaHalf, largest, chromaZero)
}

/** Code value → signal, unclipped. */
export const codeToSignal = (code: number, depth: number, range: RangeName): number => {
  const { black, peak } = codeScale(depth, range)
  return (code - black) / (peak - black)
}

/** Code value → colour difference, unclipped. */
export const codeToChroma = (code: number, depth: number, range: RangeName): number => {
  const { chromaZero, chromaHalf } = codeScale(depth, range)
  return (code - chromaZero) / (2 * chromaHalf)
}
