import type { LevelUnit } from '../core/colour/levelUnits.ts'
import type { PointSize } from '../core/picture/pointReading.ts'
import type { AppStore } from './appStore.ts'

/** What the left instrument shows. */
export type LevelInstrument = 'luma' | 'overlay' | 'parade' | 'histogram'

/** Which signal is measured: as it will be delivered, or as it was scanned. */
export type MeasuredSignal = 'graded' | 'scanned'

export type InstrumentSettings = {
  readonly levels: LevelInstrument
  readonly unit: LevelUnit
  readonly signal: MeasuredSignal
  /** Whether the vectorscope shows its middle twice as large, for balancing neutrals. */
  readonly isVectorscopeEnlarged: boolean
  /** Pixels along the side of the square that the point reading is the mean of. */
  readonly pointSize: PointSize
}

export const INITIAL_INSTRUMENTS: InstrumentSettings = {
  levels: 'luma',
  unit: 'percent',
  signal: 'graded',
  isVectorscopeEnlarged: false,
  pointSize: 1,
}

export const LEVEL_INSTRUMENTS: readonly LevelInstrument[] = [
  'luma',
  'overlay',
  'parade',
  'histogram',
]

export const LEVEL_UNITS: readonly LevelUnit[] = ['percent', 'millivolts', 'code']

export const setInstruments = (store: AppStore, change: Partial<InstrumentSettings>): void =>
  store.setState({ instruments: { ...store.getState().instruments, ...change } })

/** The one after `value`, going round at the end. */
export const nextOf = <Value>(values: readonly Value[], value: Value): Value =>
  values[(values.indexOf(value) + 1) % values.length] ?? value
