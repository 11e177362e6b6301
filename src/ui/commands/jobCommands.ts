import { redo, undo } from '../../store/document.ts'
import { setStep } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasJob = (state: AppState): boolean => state.history !== undefined

export const JOB_COMMANDS: readonly Command[] = [
  {
    id: 'open-reel',
    label: 'Open a reel…',
    group: 'Job',
    isPossible: () => true,
    run: ({ services }) => void services.pickReel(),
  },
  {
    id: 'open-job',
    label: 'Open a job…',
    group: 'Job',
    isPossible: () => true,
    run: ({ services }) => void services.pickJob(),
  },
  {
    id: 'import-list',
    label: 'Import a list…',
    group: 'Job',
    isPossible: hasJob,
    run: ({ services }) => void services.pickList(),
  },
  {
    id: 'another-scan',
    label: 'Use another scan of the reel…',
    group: 'Job',
    isPossible: (state) => hasJob(state) && state.media !== 'opening',
    run: ({ services }) => void services.pickRescan(),
  },
  {
    id: 'save',
    label: 'Save the job to a file',
    group: 'Job',
    isPossible: hasJob,
    run: ({ services }) => void services.saveJobFile(),
  },
  {
    id: 'close',
    label: 'Close the job',
    group: 'Job',
    isPossible: hasJob,
    run: ({ services }) => void services.closeJob(),
  },
  {
    id: 'undo',
    label: 'Undo',
    group: 'Job',
    isPossible: (state) => (state.history?.past.length ?? 0) > 0,
    run: ({ store }) => undo(store),
  },
  {
    id: 'redo',
    label: 'Redo',
    group: 'Job',
    isPossible: (state) => (state.history?.future.length ?? 0) > 0,
    run: ({ store }) => redo(store),
  },
  {
    id: 'hand-over',
    label: 'Hand over',
    group: 'Job',
    isPossible: hasJob,
    run: ({ store }) => setStep(store, 'hand-over'),
  },
]
