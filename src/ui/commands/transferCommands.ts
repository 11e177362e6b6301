import { setStep } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import { canBeginPass } from '../../store/transferFacts.ts'
import type { Command } from './command.ts'

const hasJob = (state: AppState): boolean => state.history !== undefined

const isWriting = ({ transferring: { run } }: AppState): boolean => run?.phase === 'writing'

/** The field of the checklist that takes a line-up. */
const LINE_UP_FIELD = 'line-up-field'

/** The graded pass by name. */
export const TRANSFER_COMMANDS: readonly Command[] = [
  {
    id: 'transfer',
    label: 'Transfer',
    group: 'Transfer',
    isPossible: hasJob,
    run: ({ store }) => setStep(store, 'transfer'),
  },
  {
    id: 'make-transfer',
    label: 'Make the transfer',
    group: 'Transfer',
    isPossible: canBeginPass,
    run: ({ store, services }) => {
      setStep(store, 'transfer')
      void services.transfer.start()
    },
  },
  {
    id: 'pause-transfer',
    label: 'Pause the transfer, or go on',
    group: 'Transfer',
    isPossible: isWriting,
    run: ({ store, services }) => {
      const { run } = store.getState().transferring
      if (run?.isPaused) services.transfer.unpause()
      else services.transfer.pause()
    },
  },
  {
    id: 'stop-transfer',
    label: 'Stop the transfer; what is done is kept',
    group: 'Transfer',
    isPossible: ({ transferring }) => transferring.run !== undefined,
    run: ({ services }) => services.transfer.stop(),
  },
  {
    id: 'line-up',
    label: 'Line up the scanner',
    group: 'Transfer',
    isPossible: hasJob,
    run: ({ store }) => setStep(store, 'line-up'),
  },
  {
    id: 'log-line-up',
    label: 'Log a line-up of the scanner in words',
    group: 'Transfer',
    isPossible: hasJob,
    run: ({ store }) => {
      setStep(store, 'transfer')
      requestAnimationFrame(() => document.getElementById(LINE_UP_FIELD)?.focus())
    },
  },
  {
    id: 'scan-checksum',
    label: 'Take the checksum of the scan',
    group: 'Transfer',
    isPossible: ({ media, transferring }) => media === 'ready' && transferring.taking === undefined,
    run: ({ services }) => void services.transfer.takeChecksum(),
  },
  {
    id: 'watch-flashes',
    label: 'Watch the whole reel for flashes',
    group: 'Transfer',
    isPossible: ({ media, flashWatch }) => media === 'ready' && flashWatch.progress === undefined,
    run: ({ store, services }) => {
      setStep(store, 'transfer')
      void services.flashes.watch()
    },
  },
]
