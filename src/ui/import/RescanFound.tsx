import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components'
import type { ReconformPlan } from '../../core/conform/reconformPlan.ts'
import {
  filterRescan,
  RECONFORM_OUTCOMES,
  type RescanFilter,
  rescanCounts,
} from '../../store/rescan.ts'
import { useApp } from '../appContext.ts'
import { NotTaken } from './NotTaken.tsx'
import { RescanNew } from './RescanNew.tsx'
import { RescanRows } from './RescanRows.tsx'
import { RECONFORM_WORDS } from './rescanWords.ts'

export type RescanFoundProps = { readonly plan: ReconformPlan; readonly filter: RescanFilter }

/** What was found of each cue, what begins anew, and what else is to be known. */
export const RescanFound = ({ plan, filter }: RescanFoundProps) => {
  const fresh = plan.added.length + plan.held.filter(({ frame }) => frame === undefined).length
  return (
    <Tabs className="import-tabs">
      <TabList aria-label="What was found" className="settings-tab-list">
        <Tab id="cues">Cues {plan.rows.length}</Tab>
        <Tab id="new">New and dropped {fresh}</Tab>
        <Tab id="known">To be known {plan.notTaken.length}</Tab>
      </TabList>
      <TabPanel id="cues" className="import-panel">
        <Filter plan={plan} filter={filter} />
        <RescanRows key={filter} plan={plan} filter={filter} />
      </TabPanel>
      <TabPanel id="new" className="import-panel">
        <RescanNew plan={plan} />
      </TabPanel>
      <TabPanel id="known" className="import-panel">
        {plan.notTaken.length === 0 && <p className="dim">There is nothing else to be known.</p>}
        <NotTaken problems={plan.notTaken} />
      </TabPanel>
    </Tabs>
  )
}

const Filter = ({ plan, filter }: RescanFoundProps) => {
  const { store } = useApp()
  const counts = rescanCounts(plan)
  return (
    <fieldset className="import-filter" aria-label="Cues listed">
      <button
        type="button"
        className={filter === 'all' ? 'button is-on' : 'button'}
        aria-pressed={filter === 'all'}
        onClick={() => filterRescan(store, 'all')}
      >
        {plan.rows.length} in all
      </button>
      {RECONFORM_OUTCOMES.map((outcome) => {
        const { sign, word, many } = RECONFORM_WORDS[outcome]
        const count = counts[outcome]
        return (
          <button
            type="button"
            key={outcome}
            className={filter === outcome ? 'button is-on' : 'button'}
            aria-pressed={filter === outcome}
            disabled={count === 0}
            onClick={() => filterRescan(store, filter === outcome ? 'all' : outcome)}
          >
            <span aria-hidden="true">{sign}</span> {count} {count === 1 ? word : many}
          </button>
        )
      })}
    </fieldset>
  )
}
