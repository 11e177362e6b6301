import type { AppState } from '../../store/state.ts'
import type { App } from '../appContext.ts'

/** One thing a person can do. Buttons, keys and the command list all come from here. */
export type Command = {
  readonly id: string
  readonly label: string
  /** Under which heading the list of commands shows it. */
  readonly group:
    | 'Job'
    | 'Play'
    | 'Cues'
    | 'Boundaries'
    | 'Picture'
    | 'Agree'
    | 'Transfer'
    | 'Instruments'
    | 'Grade'
    | 'Framing'
    | 'Ledger'
    | 'Settings'
  readonly isPossible: (state: AppState) => boolean
  readonly run: (app: App) => void
  /** For what holds only as long as its key or button does: run on pressing, this on letting go. */
  readonly release?: (app: App) => void
}
