import type { GradeColumn } from '../../core/colour/gradeColumns.ts'
import { keepAlternate, promoteAlternate } from '../../core/job/commands/keepAlternate.ts'
import {
  carryFromPrevious,
  carryOn,
  carryTargets,
  copyValues,
  pasteValues,
} from '../../store/carrying.ts'
import { perform } from '../../store/document.ts'
import { cuesOf, currentCue } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { setSheet } from '../../store/session.ts'
import type { AppState, Sheet } from '../../store/state.ts'
import type { Command } from './command.ts'

const hasCue = (state: AppState): boolean => currentCue(state) !== undefined

const canCarry = (state: AppState, where: 'next' | 'scene'): boolean => {
  const cue = currentCue(state)
  return cue !== undefined && carryTargets(cuesOf(state), cue, where).length > 0
}

const PLOT_COLUMNS: readonly GradeColumn[] = ['all', 0, 1, 2]

const sheetCommand = (sheet: Sheet, label: string): Command => ({
  id: `sheet-${sheet}`,
  label,
  group: 'Grade',
  isPossible: hasCue,
  run: ({ store }) => setSheet(store, sheet),
})

/** Carrying values from cue to cue, alternates, and which controls are out. */
export const CARRY_COMMANDS: readonly Command[] = [
  sheetCommand('grade', 'Controls: grade'),
  sheetCommand('cue', 'Controls: cue'),
  {
    id: 'plot-curve',
    label: 'Next curve of the transfer plot',
    group: 'Grade',
    isPossible: hasCue,
    run: ({ store }) => {
      const at = PLOT_COLUMNS.indexOf(store.getState().plotColumn)
      store.setState({ plotColumn: PLOT_COLUMNS[(at + 1) % PLOT_COLUMNS.length] ?? 'all' })
    },
  },
  {
    id: 'trim',
    label: 'Trim the selection, or set it alike',
    group: 'Grade',
    isPossible: (state) => state.selection.length > 1,
    run: ({ store }) => store.setState(({ isTrimming }) => ({ isTrimming: !isTrimming })),
  },
  {
    id: 'copy-values',
    label: 'Copy grade and framing',
    group: 'Cues',
    isPossible: hasCue,
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
  {
    id: 'keep-alternate',
    label: 'Keep the grade as an alternate',
    group: 'Grade',
    isPossible: hasCue,
    run: ({ store }) => perform(store, (job) => keepAlternate(job, editedCues(store))),
  },
  {
    id: 'next-alternate',
    label: 'Put the next alternate in force',
    group: 'Grade',
    isPossible: (state) => (currentCue(state)?.alternates.length ?? 0) > 0,
    run: ({ store }) => {
      const cue = currentCue(store.getState())
      if (cue) perform(store, (job) => promoteAlternate(job, cue.id, 0))
    },
  },
]
