import { compareWithNext, holdHere, toggleArrangement } from '../../store/comparing.ts'
import { setView } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasMedia = (state: AppState): boolean => state.media === 'ready'

export const COMPARE_COMMANDS: readonly Command[] = [
  {
    id: 'side-by-side',
    label: 'Show the pictures beside each other',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => toggleArrangement(store, 'side-by-side'),
  },
  {
    id: 'difference',
    label: 'Show the difference of the two pictures, four times, about black',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => toggleArrangement(store, 'difference'),
  },
  {
    id: 'alone',
    label: 'Show the graded picture alone',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => setView(store, { arrangement: 'alone' }),
  },
  {
    id: 'compare-next',
    label: 'Compare with the next: scanned, alternates, held frames',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => compareWithNext(store),
  },
  {
    id: 'hold-frame',
    label: 'Hold this frame as a reference',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => holdHere(store),
  },
  {
    id: 'open-still',
    label: 'Open a still as a reference for this session…',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ services }) => void services.openStill(),
  },
]
