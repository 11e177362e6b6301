import type { LevelUnit } from '../../core/colour/levelUnits.ts'
import type { LevelInstrument, MeasuredSignal } from '../../store/instrumentSettings.ts'

export const INSTRUMENT_NAMES: readonly { readonly id: LevelInstrument; readonly label: string }[] =
  [
    { id: 'luma', label: 'waveform · luma' },
    { id: 'overlay', label: 'waveform · R′G′B′' },
    { id: 'parade', label: 'parade · R′G′B′' },
    { id: 'histogram', label: 'histogram' },
  ]

export const UNIT_NAMES: readonly { readonly id: LevelUnit; readonly label: string }[] = [
  { id: 'percent', label: '%' },
  { id: 'millivolts', label: 'mV' },
  { id: 'code', label: '10-bit code' },
]

export const SIGNAL_NAMES: readonly { readonly id: MeasuredSignal; readonly label: string }[] = [
  { id: 'graded', label: 'graded' },
  { id: 'scanned', label: 'scanned' },
]

export const MEASURES_SIGNAL =
  'Measures the signal, not the screen: what this browser or display shows does not change it.'
