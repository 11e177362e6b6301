/** What the left instrument shows. */
export type LevelInstrument = 'luma' | 'overlay' | 'parade' | 'histogram'

/** How levels are written: percent of peak, millivolts (700 = peak), 10-bit codes. */
export type LevelUnit = 'percent' | 'millivolts' | 'code'

export type InstrumentSettings = {
  readonly levels: LevelInstrument
  readonly unit: LevelUnit
  /** Which signal is measured: as it will be delivered, or as it was scanned. */
  readonly signal: 'graded' | 'scanned'
}

export const INITIAL_INSTRUMENTS: InstrumentSettings = {
  levels: 'luma',
  unit: 'percent',
  signal: 'graded',
}
