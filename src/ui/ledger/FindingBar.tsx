import { setLedger } from '../../store/ledgerChanges.ts'
import { CUE_FILTERS, type CueFilter } from '../../store/ledgerView.ts'
import { cuesOf } from '../../store/queries.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { paceText } from '../parts/paceText.ts'
import { STRINGS } from '../strings.ts'

/** Above the ledger: finding shots and how far it is, what is listed, and how the strip is drawn. */
export const FindingBar = () => {
  const { services } = useApp()
  const finding = useAppState((state) => state.finding)
  /** Nothing is cut yet: shots are found, or come with a list. */
  const isFresh = useAppState((state) => cuesOf(state).length === 1)
  if (!finding)
    return (
      <div className="finding-bar" role="toolbar" aria-label="Ledger">
        <CommandButton isTerse id="find-shots" />
        {isFresh ? (
          <CommandButton id="import-list" />
        ) : (
          <CommandButton id="next-needing" label="Next that needs me" />
        )}
        <span className="spacer" />
        <FilterChoice />
        <StripScale />
      </div>
    )
  return (
    <div className="finding-bar">
      <progress value={finding.done} max={finding.total} aria-label="Finding shots" />
      <span role="status">{paceText('Finding shots', finding)}</span>
      <button type="button" className="button" onClick={services.stopFinding}>
        Cancel
      </button>
    </div>
  )
}

const countOf = (state: AppState, filter: CueFilter): number => {
  const { notAgreed, outside, unlooked, doubtful, changed } = standingOf(state)
  const counts = {
    all: cuesOf(state).length,
    'not-agreed': notAgreed,
    outside,
    'not-looked-at': unlooked,
    doubtful,
    'changed-since': changed,
  }
  return counts[filter]
}

/** The counts as one text, so that the choice is drawn only when one of them changes. */
const countsOf = (state: AppState): string =>
  CUE_FILTERS.map((filter) => countOf(state, filter)).join(' ')

const FilterChoice = () => {
  const { store } = useApp()
  const filter = useAppState((state) => state.ledger.filter)
  const counts = useAppState(countsOf).split(' ')
  return (
    <select
      className="filter-choice"
      aria-label="Cues listed"
      title="which cues are listed"
      value={filter}
      onChange={(event) => setLedger(store, { filter: event.currentTarget.value as CueFilter })}
    >
      {CUE_FILTERS.map((each, i) => (
        <option key={each} value={each}>
          {counts[i]} {each === 'all' && counts[i] === '1' ? 'cue' : STRINGS.filters[each]}
        </option>
      ))}
    </select>
  )
}

const StripScale = () => {
  const timing = useAppState((state) => state.ledger.timing)
  return (
    <fieldset className="strip-scale" aria-label="Lengths on the strip">
      <CommandButton isTerse id="strip-timing" label="Shot lengths" isPressed={timing === 'true'} />
      <CommandButton isTerse id="strip-shorter" label="−" />
      <CommandButton isTerse id="strip-longer" label="+" />
    </fieldset>
  )
}
