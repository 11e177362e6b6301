import { setView } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasMedia = (state: AppState): boolean => state.media === 'ready'

export const PICTURE_COMMANDS: readonly Command[] = [
  {
    id: 'wipe',
    label: 'Wipe between scanned and graded',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) =>
      setView(store, {
        arrangement: store.getState().view.arrangement === 'wipe' ? 'alone' : 'wipe',
      }),
  },
  {
    id: 'scanned',
    label: 'Show the scanned picture',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => setView(store, { isPeeking: true }),
    release: ({ store }) => setView(store, { isPeeking: false }),
  },
  {
    id: 'excursions',
    label: 'Show excursions on the picture',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => setView(store, { showsExcursions: !store.getState().view.showsExcursions }),
  },
]
