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
import { OutcomeFilter } from './OutcomeFilter.tsx'
import { RescanNew } from './RescanNew.tsx'
import { RescanRows } from './RescanRows.tsx'
import { RECONFORM_WORDS } from './rescanWords.ts'

export type RescanFoundProps = { readonly plan: ReconformPlan; readonly filter: RescanFilter }

/** What was found of each cue, what begins anew, and remarks. */
export const RescanFound = ({ plan, filter }: RescanFoundProps) => {
  const { store } = useApp()
  const fresh = plan.added.length + plan.held.filter(({ frame }) => frame === undefined).length
  return (
    <Tabs className="import-tabs">
      <TabList aria-label="What was found" className="settings-tab-list">
        <Tab id="cues">Cues {plan.rows.length}</Tab>
        <Tab id="new">New and dropped {fresh}</Tab>
        <Tab id="remarks">Remarks {plan.notTaken.length}</Tab>
      </TabList>
      <TabPanel id="cues" className="import-panel">
        <OutcomeFilter
          label="Cues listed"
          total={plan.rows.length}
          outcomes={RECONFORM_OUTCOMES}
          words={RECONFORM_WORDS}
          counts={rescanCounts(plan)}
          filter={filter}
          onFilter={(chosen) => filterRescan(store, chosen)}
        />
        <RescanRows key={filter} plan={plan} filter={filter} />
      </TabPanel>
      <TabPanel id="new" className="import-panel">
        <RescanNew plan={plan} />
      </TabPanel>
      <TabPanel id="remarks" className="import-panel">
        {plan.notTaken.length === 0 && <p className="dim">No remarks.</p>}
        <NotTaken problems={plan.notTaken} />
      </TabPanel>
    </Tabs>
  )
}
