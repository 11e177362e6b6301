import { useId } from 'react'
import {
  Button,
  Dialog,
  Heading,
  Modal,
  ModalOverlay,
  Tab,
  TabList,
  TabPanel,
  Tabs,
} from 'react-aria-components'
import type { ImportPlan } from '../../core/conform/importPlan.ts'
import {
  filterImport,
  IMPORT_OUTCOMES,
  type Importing,
  importList,
  importPlanOf,
  leaveImport,
  outcomeCounts,
} from '../../store/importing.ts'
import { useApp, useAppState } from '../appContext.ts'
import { ImportChoices } from './ImportChoices.tsx'
import { ImportRows } from './ImportRows.tsx'
import { counted, listText, OUTCOME_WORDS } from './importWords.ts'
import { LeftCues } from './LeftCues.tsx'
import { NotTaken } from './NotTaken.tsx'
import { OutcomeFilter } from './OutcomeFilter.tsx'

/** A list made elsewhere over the job: how it is taken, and what each of its decisions would do. */
export const ImportDialog = () => {
  const { store } = useApp()
  const importing = useAppState((state) => state.importing)
  const plan = useAppState(importPlanOf)
  return (
    <ModalOverlay
      className="overlay"
      isOpen={importing !== undefined}
      onOpenChange={(isToBeOpen) => {
        if (!isToBeOpen) leaveImport(store)
      }}
    >
      <Modal className="modal import">
        <Dialog>{importing && plan && <Import importing={importing} plan={plan} />}</Dialog>
      </Modal>
    </ModalOverlay>
  )
}

type ImportProps = { readonly importing: Importing; readonly plan: ImportPlan }

/** Why nothing can come of an import; undefined where something would. */
const whyNothing = ({ startRefusal }: Importing, plan: ImportPlan): string | undefined => {
  if (startRefusal !== undefined) return startRefusal
  const { options } = plan
  if (!options.takesPlaces && !options.takesGrades) return 'Take places, grades, or both.'
  const { matches, moves, begins } = outcomeCounts(plan)
  return matches + moves + begins === 0 ? 'No decision finds its cue this way.' : undefined
}

const Import = ({ importing, plan }: ImportProps) => {
  const { store } = useApp()
  const { name, list, options, filter } = importing
  const reasonId = useId()
  const nothing = whyNothing(importing, plan)
  const { conflicts } = outcomeCounts(plan)
  return (
    <>
      <div className="import-head">
        <Heading slot="title">Import {name}</Heading>
        <p className="dim">{listText(list)}</p>
      </div>
      <ImportChoices list={list} options={options} reasonId={reasonId} />
      <Tabs className="import-tabs">
        <TabList aria-label="What the import would do" className="settings-tab-list">
          <Tab id="decisions">Decisions {plan.rows.length}</Tab>
          <Tab id="not-taken">Not taken {plan.notTaken.length}</Tab>
          <Tab id="left">Cues left as they are {plan.untouched.length}</Tab>
        </TabList>
        <TabPanel id="decisions" className="import-panel">
          <OutcomeFilter
            label="Decisions listed"
            total={plan.rows.length}
            outcomes={IMPORT_OUTCOMES}
            words={OUTCOME_WORDS}
            counts={outcomeCounts(plan)}
            filter={filter}
            onFilter={(chosen) => filterImport(store, chosen)}
          />
          <ImportRows key={filter} list={list} plan={plan} filter={filter} />
        </TabPanel>
        <TabPanel id="not-taken" className="import-panel">
          <p className="dim">
            {plan.notTaken.length === 0
              ? 'All that the list says is taken, or kept with the job to be written back.'
              : 'The list says this, and the job has no place for it. All else is taken, or kept with the job to be written back.'}
          </p>
          <NotTaken problems={plan.notTaken} />
        </TabPanel>
        <TabPanel id="left" className="import-panel">
          <LeftCues numbers={plan.untouched} />
        </TabPanel>
      </Tabs>
      <div className="import-foot">
        <p id={reasonId} role="status">
          {nothing !== undefined && `▲ ${nothing}`}
          {nothing === undefined &&
            (conflicts > 0
              ? `▲ ${counted(conflicts, 'conflict is', 'conflicts are')} left out.`
              : 'Nothing is changed until it is imported.')}
        </p>
        <Button className="button" onPress={() => leaveImport(store)}>
          Cancel
        </Button>
        <Button
          className="button primary"
          isDisabled={nothing !== undefined}
          onPress={() => importList(store)}
        >
          Import
        </Button>
      </div>
    </>
  )
}
