import type { ImportPlan } from '../../core/conform/importPlan.ts'
import {
  filterImport,
  IMPORT_OUTCOMES,
  outcomeCounts,
  type RowFilter,
} from '../../store/importing.ts'
import { useApp } from '../appContext.ts'
import { OUTCOME_WORDS } from './importWords.ts'

export type ImportFilterProps = { readonly plan: ImportPlan; readonly filter: RowFilter }

/** How many decisions have each outcome; pressed, only those are listed. */
export const ImportFilter = ({ plan, filter }: ImportFilterProps) => {
  const { store } = useApp()
  const counts = outcomeCounts(plan)
  return (
    <fieldset className="import-filter" aria-label="Decisions listed">
      <button
        type="button"
        className={filter === 'all' ? 'button is-on' : 'button'}
        aria-pressed={filter === 'all'}
        onClick={() => filterImport(store, 'all')}
      >
        {plan.rows.length} in all
      </button>
      {IMPORT_OUTCOMES.map((outcome) => {
        const { sign, word, many } = OUTCOME_WORDS[outcome]
        const count = counts[outcome]
        return (
          <button
            type="button"
            key={outcome}
            className={filter === outcome ? 'button is-on' : 'button'}
            aria-pressed={filter === outcome}
            disabled={count === 0}
            onClick={() => filterImport(store, filter === outcome ? 'all' : outcome)}
          >
            <span aria-hidden="true">{sign}</span> {count} {count === 1 ? word : many}
          </button>
        )
      })}
    </fieldset>
  )
}
