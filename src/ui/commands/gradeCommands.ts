import type { GradeColumn } from '../../core/colour/gradeColumns.ts'
import { keepAlternate, promoteAlternate } from '../../core/job/commands/keepAlternate.ts'
import { perform } from '../../store/document.ts'
import { currentCue } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { setSheet } from '../../store/session.ts'
import type { AppState, Sheet } from '../../store/state.ts'
import type { Command } from './command.ts'
import { openSheet } from './openSheet.ts'

const hasCue = (state: AppState): boolean => currentCue(state) !== undefined

const sheetCommand = (sheet: Sheet, label: string): Command => ({
  id: `sheet-${sheet}`,
  label,
  group: 'Grade',
  isPossible: hasCue,
  run: ({ store }) => openSheet(store, sheet),
})

/** Puts the focus on a number of the grade, to be typed or nudged. */
const numberCommand = (id: string, field: string): Command => ({
  id,
  label: `Set the number: ${field}`,
  group: 'Grade',
  isPossible: hasCue,
  run: ({ store }) => {
    setSheet(store, 'grade')
    requestAnimationFrame(() =>
      document.querySelector<HTMLElement>(`.grade-table [aria-label="${field}"]`)?.focus(),
    )
  },
})

const PLOT_COLUMNS: readonly GradeColumn[] = ['all', 0, 1, 2]

/** Which controls are out, the numbers of a grade, and a cue's other grades. */
export const GRADE_COMMANDS: readonly Command[] = [
  sheetCommand('grade', 'Controls: grade'),
  sheetCommand('cue', 'Controls: cue'),
  numberCommand('number-gain', 'gain all'),
  numberCommand('number-gamma', 'gamma all'),
  numberCommand('number-lift', 'lift all'),
  numberCommand('number-saturation', 'saturation'),
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
