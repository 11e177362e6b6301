import {
  LEVEL_INSTRUMENTS,
  LEVEL_UNITS,
  nextOf,
  setInstruments,
} from '../../store/instrumentSettings.ts'
import { readAt } from '../../store/pointingChanges.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasMedia = (state: AppState): boolean => state.media === 'ready'

export const INSTRUMENT_COMMANDS: readonly Command[] = [
  {
    id: 'instrument-levels',
    label: 'Next instrument of levels',
    group: 'Instruments',
    isPossible: hasMedia,
    run: ({ store }) => {
      const { levels } = store.getState().instruments
      setInstruments(store, { levels: nextOf(LEVEL_INSTRUMENTS, levels) })
    },
  },
  {
    id: 'instrument-unit',
    label: 'Next unit of levels',
    group: 'Instruments',
    isPossible: hasMedia,
    run: ({ store }) => {
      const { unit } = store.getState().instruments
      setInstruments(store, { unit: nextOf(LEVEL_UNITS, unit) })
    },
  },
  {
    id: 'instrument-signal',
    label: 'Measure the scanned or the graded signal',
    group: 'Instruments',
    isPossible: hasMedia,
    run: ({ store }) => {
      const { signal } = store.getState().instruments
      setInstruments(store, { signal: nextOf(['graded', 'scanned'], signal) })
    },
  },
  {
    id: 'vectorscope-enlarge',
    label: 'Enlarge the middle of the vectorscope',
    group: 'Instruments',
    isPossible: hasMedia,
    run: ({ store }) => {
      const { isVectorscopeEnlarged } = store.getState().instruments
      setInstruments(store, { isVectorscopeEnlarged: !isVectorscopeEnlarged })
    },
  },
  {
    id: 'point-size',
    label: 'Read points as 1 × 1 or 5 × 5 pixels',
    group: 'Instruments',
    isPossible: hasMedia,
    run: ({ store }) => {
      const { pointSize } = store.getState().instruments
      setInstruments(store, { pointSize: nextOf([1, 5], pointSize) })
    },
  },
  {
    id: 'point-middle',
    label: 'Read the point in the middle of the scan',
    group: 'Instruments',
    isPossible: hasMedia,
    run: ({ store }) => readAt(store, { x: 0.5, y: 0.5 }),
  },
  {
    id: 'point-reset',
    label: 'Take the kept point away',
    group: 'Instruments',
    isPossible: ({ pointing }) => pointing.reading !== undefined,
    run: ({ store }) => readAt(store, undefined),
  },
]
