import type { DisplaySpace } from '../../core/colour/displaySignal.ts'
import { toggleArrangement } from '../../store/comparing.ts'
import { setOpened, setView } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasMedia = (state: AppState): boolean => state.media === 'ready'

const DISPLAY_SPACES: readonly DisplaySpace[] = ['srgb', 'display-p3', 'as-coded']

export const PICTURE_COMMANDS: readonly Command[] = [
  {
    id: 'wipe',
    label: 'Wipe between the graded picture and another',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => toggleArrangement(store, 'wipe'),
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
  {
    id: 'display',
    label: 'Show for the next kind of display: sRGB, Display P3, as coded',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store }) => {
      const { display } = store.getState().view
      const next = (DISPLAY_SPACES.indexOf(display) + 1) % DISPLAY_SPACES.length
      setView(store, { display: DISPLAY_SPACES[next] ?? 'srgb' })
    },
  },
  {
    id: 'save-frame',
    label: 'Save this frame…',
    group: 'Picture',
    isPossible: hasMedia,
    run: ({ store, services }) => {
      services.pause()
      setOpened(store, 'save-frame')
    },
  },
]
