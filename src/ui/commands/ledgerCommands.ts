import { setLedger } from '../../store/ledgerChanges.ts'
import { CUE_FILTERS, type CueFilter, nextScale } from '../../store/ledgerView.ts'
import type { AppState } from '../../store/state.ts'
import { STRINGS } from '../strings.ts'
import type { Command } from './command.ts'

const hasJob = (state: AppState): boolean => state.history !== undefined

const filterCommand = (filter: CueFilter): Command => ({
  id: `filter-${filter}`,
  label: filter === 'all' ? 'List all cues' : `List only: ${STRINGS.filters[filter]}`,
  group: 'Ledger',
  isPossible: hasJob,
  run: ({ store }) => setLedger(store, { filter }),
})

const scaleCommand = (id: string, label: string, direction: 1 | -1): Command => ({
  id,
  label,
  group: 'Ledger',
  isPossible: (state) =>
    hasJob(state) &&
    state.ledger.timing === 'true' &&
    nextScale(state.ledger, direction) !== undefined,
  run: ({ store }) => {
    const pixelsPerSecond = nextScale(store.getState().ledger, direction)
    if (pixelsPerSecond !== undefined) setLedger(store, { pixelsPerSecond })
  },
})

export const LEDGER_COMMANDS: readonly Command[] = [
  {
    id: 'strip-timing',
    label: 'Strip in true shot lengths, or a row to each cue',
    group: 'Ledger',
    isPossible: hasJob,
    run: ({ store }) =>
      setLedger(store, { timing: store.getState().ledger.timing === 'true' ? 'even' : 'true' }),
  },
  scaleCommand('strip-longer', 'Longer strip: more pixels a second', 1),
  scaleCommand('strip-shorter', 'Shorter strip: more of the reel at once', -1),
  ...CUE_FILTERS.map(filterCommand),
]
