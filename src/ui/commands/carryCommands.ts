import {
  carryFromPrevious,
  carryOn,
  carryTargets,
  copyValues,
  pasteValues,
} from '../../store/carrying.ts'
import { cuesOf, currentCue } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'
import type { Command } from './command.ts'

const canCarry = (state: AppState, where: 'next' | 'scene'): boolean => {
  const cue = currentCue(state)
  return cue !== undefined && carryTargets(cuesOf(state), cue, where).length > 0
}

/** What goes from one cue to others. */
export const CARRY_COMMANDS: readonly Command[] = [
  {
    id: 'copy-values',
    label: 'Copy grade and framing',
    group: 'Cues',
    isPossible: (state) => currentCue(state) !== undefined,
    run: ({ store }) => copyValues(store),
  },
  {
    id: 'paste-values',
    label: 'Paste on the cues selected',
    group: 'Cues',
    isPossible: (state) => state.clipboard !== undefined && state.carriedParts.length > 0,
    run: ({ store }) => pasteValues(store),
  },
  {
    id: 'carry-next',
    label: 'Carry to the next cue',
    group: 'Cues',
    isPossible: (state) => canCarry(state, 'next') && state.carriedParts.length > 0,
    run: ({ store }) => carryOn(store, 'next'),
  },
  {
    id: 'carry-scene',
    label: 'Carry to all cues of the same scene mark',
    group: 'Cues',
    isPossible: (state) => canCarry(state, 'scene') && state.carriedParts.length > 0,
    run: ({ store }) => carryOn(store, 'scene'),
  },
  {
    id: 'carry-previous',
    label: 'Carry from the cue before',
    group: 'Cues',
    isPossible: (state) => (currentCue(state)?.first ?? 0) > 0 && state.carriedParts.length > 0,
    run: ({ store }) => carryFromPrevious(store),
  },
]
