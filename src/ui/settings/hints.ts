import { cuesOf, currentCue } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'

export type HintLine = {
  readonly id: string
  /** The words, from the names of the keys in use; undefined where it needs a key that is not there. */
  readonly says: (key: (commandId: string) => string | undefined) => string | undefined
  /** Whether what it tells of was just done. */
  readonly isDone: (state: AppState, before: AppState) => boolean
}

/** Hints for the first hours, in the order they are of use. */
export const HINTS: readonly HintLine[] = [
  {
    id: 'numbers',
    says: () => 'Drag a number sideways, or type it. Arrow keys nudge it: Shift coarse, Alt fine.',
    isDone: ({ gesture }) => gesture !== undefined,
  },
  {
    id: 'scanned',
    says: (key) => key('scanned') && `Hold ${key('scanned')} to see the scanned picture.`,
    isDone: ({ view }) => view.isPeeking,
  },
  {
    id: 'cues',
    says: (key) =>
      key('cue-on') &&
      key('cue-back') &&
      `${key('cue-back')} and ${key('cue-on')} go to the cue before and the next.`,
    isDone: (state, before) =>
      state.playhead !== before.playhead &&
      !state.playback.isPlaying &&
      state.shelfKey === before.shelfKey &&
      currentCue(state)?.first === state.playhead,
  },
  {
    id: 'split',
    says: (key) =>
      key('split') &&
      key('join') &&
      `${key('split')} splits the cue at the line, ${key('join')} joins it to the one before.`,
    isDone: (state, before) =>
      state.history !== before.history &&
      state.shelfKey === before.shelfKey &&
      state.finding === undefined &&
      cuesOf(state).length !== cuesOf(before).length,
  },
  {
    id: 'find-command',
    says: (key) => key('find-command') && `${key('find-command')} finds any command by a word.`,
    isDone: ({ opened }) => opened === 'commands',
  },
  {
    id: 'settings',
    says: () => 'Under Keys, in the head, are the layout for the other hand and sizes of text.',
    isDone: ({ opened }) => opened === 'settings',
  },
]
