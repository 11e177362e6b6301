/** How levels are written: percent of peak, millivolts (700 = peak), 10-bit codes. */
export type LevelUnit = 'percent' | 'millivolts' | 'code'

/** What a unit calls black, and how much of it lies between black and peak. */
const SCALES: Readonly<Record<LevelUnit, { readonly black: number; readonly span: number }>> = {
  percent: { black: 0, span: 100 },
  /** A component signal of 700 mV at peak, without set-up: EBU Tech 3267 (N10), from memory. */
  millivolts: { black: 0, span: 700 },
  /** Narrow range, BT.709-6 §4.6: black 64, peak 940. */
  code: { black: 64, span: 876 },
}

/** A signal level (0 black, 1 peak) as a number of `unit`, not rounded. */
export const levelInUnit = (level: number, unit: LevelUnit): number =>
  SCALES[unit].black + level * SCALES[unit].span
