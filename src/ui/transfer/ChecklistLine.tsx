import type { ChecklistItem } from '../../core/transfer/checklist.ts'
import { CHECKLIST_TITLES, type Override } from '../../core/transfer/override.ts'
import { reelOf } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import { ChecklistRemedy } from './ChecklistRemedy.tsx'
import { ReasonField } from './ReasonField.tsx'
import { CHECKLIST_SIGNS } from './transferWords.ts'

/** A reason that does not hold now: it was for something else, or nothing needs it. */
const KeptReason = ({ kept, isNeeded }: { kept: Override; isNeeded: boolean }) => (
  <p className="dim">
    {isNeeded ? 'A reason was given for something else' : 'A reason is kept that is not needed now'}
    : “{kept.reason}”, when it said “{kept.found}”.
  </p>
)

/** One thing that is looked at: how it stands, what to do, and the reason that may stand for it. */
export const ChecklistLine = ({ item }: { readonly item: ChecklistItem }) => {
  const { check, standing, says, override } = item
  const kept = useAppState((state) => reelOf(state)?.overrides.find((each) => each.check === check))
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
          {(standing !== 'right' || kept) && <ReasonField item={item} kept={kept} />}
        </div>
        {kept && !override && <KeptReason kept={kept} isNeeded={standing !== 'right'} />}
      </div>
    </li>
  )
}
