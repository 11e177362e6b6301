import type { AppState } from '../../store/state.ts'
import type { App } from '../appContext.ts'

/** One thing a person can do. Buttons, keys and the command list all come from here. */
export type Command = {
  readonly id: string
  readonly label: string
  /** Under which heading the list of commands shows it. */
  readonly group: 'Job' | 'Play' | 'Cues' | 'Boundaries' | 'Picture'
  /** Keys that run it, such as 'Space', 'Shift+ArrowRight', 'Mod+Z' (Mod is Ctrl or ⌘). */
  readonly keys: readonly string[]
  readonly isPossible: (state: AppState) => boolean
  readonly run: (app: App) => void
}
