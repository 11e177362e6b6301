import { BLANKING_RATIOS, type BlankingRatio } from '../../core/framing/openRatio.ts'
import { blankTo, setSqueeze } from '../../store/framingChoices.ts'
import { currentCue } from '../../store/queries.ts'
import { setView } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'
import { openSheet } from './openSheet.ts'

const hasCue = (state: AppState): boolean => currentCue(state) !== undefined

const hasMedia = (state: AppState): boolean => state.media === 'ready'

export const blankingCommandId = ({ name }: BlankingRatio): string =>
  `blank-${name.replace('.', '')}`

export const FRAMING_COMMANDS: readonly Command[] = [
  {
    id: 'sheet-framing',
    label: 'Controls: framing',
    group: 'Framing',
    isPossible: hasCue,
    run: ({ store }) => openSheet(store, 'framing'),
  },
  {
    id: 'aperture',
    label: 'Show the whole scan with the delivered frame on it',
    group: 'Framing',
    isPossible: hasMedia,
    run: ({ store }) => setView(store, { showsAperture: !store.getState().view.showsAperture }),
  },
  {
    id: 'safe-areas',
    label: 'Show safe areas',
    group: 'Framing',
    isPossible: hasMedia,
    run: ({ store }) => setView(store, { showsSafeAreas: !store.getState().view.showsSafeAreas }),
  },
  {
    id: 'squeeze-1',
    label: 'Squeeze 1.0: not squeezed',
    group: 'Framing',
    isPossible: hasCue,
    run: ({ store }) => setSqueeze(store, 1),
  },
  {
    id: 'squeeze-2',
    label: 'Squeeze 2.0: anamorphic print',
    group: 'Framing',
    isPossible: hasCue,
    run: ({ store }) => setSqueeze(store, 2),
  },
  {
    id: 'blank-none',
    label: 'Take the blanking away',
    group: 'Framing',
    isPossible: hasCue,
    run: ({ store }) => blankTo(store, undefined),
  },
  ...BLANKING_RATIOS.map(
    (ratio): Command => ({
      id: blankingCommandId(ratio),
      label: `Blank to ${ratio.name} : 1`,
      group: 'Framing',
      isPossible: hasCue,
      run: ({ store }) => blankTo(store, ratio.ratio),
    }),
  ),
]
