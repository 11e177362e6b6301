import { setView } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasMedia = (state: AppState): boolean => state.media === 'ready'

export const PICTURE_COMMANDS: readonly Command[] = [
  {
    id: 'wipe',
    label: 'Wipe between scanned and graded',
    group: 'Picture',
    keys: ['W'],
    isPossible: hasMedia,
    run: ({ store }) =>
      setView(store, { compare: store.getState().view.compare === 'wipe' ? 'graded' : 'wipe' }),
  },
  {
    id: 'scanned',
    label: 'Show the scanned picture',
    group: 'Picture',
    keys: ['V'],
    isPossible: hasMedia,
    run: ({ store }) =>
      setView(store, {
        compare: store.getState().view.compare === 'scanned' ? 'graded' : 'scanned',
      }),
  },
  {
    id: 'excursions',
    label: 'Show excursions on the picture',
    group: 'Picture',
    keys: ['E'],
    isPossible: hasMedia,
    run: ({ store }) => setView(store, { showsExcursions: !store.getState().view.showsExcursions }),
  },
]
