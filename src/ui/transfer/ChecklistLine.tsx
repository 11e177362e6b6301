import { dropOverride } from '../../core/job/commands/setOverride.ts'
import type { ChecklistItem } from '../../core/transfer/checklist.ts'
import { CHECKLIST_TITLES, type Override } from '../../core/transfer/override.ts'
import { perform } from '../../store/document.ts'
import { reelOf } from '../../store/queries.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { ChecklistRemedy } from './ChecklistRemedy.tsx'
import { ReasonField } from './ReasonField.tsx'
import { CHECKLIST_SIGNS } from './transferWords.ts'

/** A reason that does not hold now: it was for something else, or nothing needs it. */
const KeptReason = ({ kept, isNeeded }: { kept: Override; isNeeded: boolean }) => {
  const { store } = useApp()
  const takeBack = () => {
    const reel = reelOf(store.getState())
    if (reel) perform(store, (job) => dropOverride(job, reel.id, kept.check))
  }
  return (
    <p className="dim">
      {isNeeded
        ? 'A reason was given for something else'
        : 'A reason is kept that is not needed now'}
      : “{kept.reason}”, when it said “{kept.found}”{' '}
      <button type="button" className="link" onClick={takeBack}>
        take that reason back
      </button>
    </p>
  )
}

/** Cues are being measured: what is found outside grows by itself, and a reason would not hold. */
const isMeasuring = ({ checking, media }: AppState): boolean =>
  checking !== undefined && media === 'ready'

/** One thing that is looked at: how it stands, what to do, and the reason that may stand for it. */
export const ChecklistLine = ({ item }: { readonly item: ChecklistItem }) => {
  const { check, standing, says, override } = item
  const kept = useAppState((state) => reelOf(state)?.overrides.find((each) => each.check === check))
  const mustWait = useAppState(isMeasuring) && check === 'tolerance' && !override
  const title = CHECKLIST_TITLES[check]
  return (
    <li
      aria-label={title}
      className={override ? 'is-overridden' : `is-${standing.replace(' ', '-')}`}
    >
      <span aria-hidden="true" className="sign">
        {override ? '◐' : CHECKLIST_SIGNS[standing]}
      </span>
      <div>
        <b>{title}</b> <span className="dim">{override ? 'passed with a reason' : standing}</span>
        <p>{says}</p>
        <div className="button-row">
          <ChecklistRemedy item={item} />
          {standing !== 'right' &&
            (mustWait ? (
              <span className="dim">a reason can be written once all is measured</span>
            ) : (
              <ReasonField item={item} />
            ))}
        </div>
        {kept && !override && <KeptReason kept={kept} isNeeded={standing !== 'right'} />}
      </div>
    </li>
  )
}
