import { useId, useState } from 'react'
import { logLineUp } from '../../core/job/commands/logLineUp.ts'
import { readingsOutside } from '../../core/lineup/adjustment.ts'
import { LINE_UP_SHEETS } from '../../core/lineup/lineUpSheets.ts'
import { lineUpWords } from '../../core/lineup/lineUpWords.ts'
import { machineEntry } from '../../core/lineup/machineLog.ts'
import { perform } from '../../store/document.ts'
import { sayIsLogged } from '../../store/liningUp.ts'
import { addToHistory } from '../../store/machineHistory.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'

/** The line-up as it ended, logged for the reel; what lies outside needs a written reason. */
export const LogCard = () => {
  const { store, services } = useApp()
  const id = useId()
  const [reason, setReason] = useState('')
  const { adjustment, sheet, cleaned } = useAppState(({ liningUp }) => liningUp)
  const reel = useAppState(reelOf)
  const last = adjustment.log.at(-1)
  const outside = last ? readingsOutside(adjustment.readings, last.values) : []
  const mustSayWhy = outside.length > 0
  const title = LINE_UP_SHEETS.find((each) => each.id === sheet)?.title ?? 'Line-up'
  const log = () => {
    if (!reel) return
    const at = new Date().toISOString()
    const says = lineUpWords(adjustment, title, reason, cleaned)
    if (!perform(store, (job) => logLineUp(job, reel.id, { at, says }))) return
    setReason('')
    sayIsLogged(store)
    const { machine } = store.getState().machineHistory
    const particulars = { machine, gauge: reel.gauge, at, reason: mustSayWhy ? reason.trim() : '' }
    const entry = machine === '' ? undefined : machineEntry(adjustment, particulars)
    if (entry) addToHistory(store, entry)
  }
  return (
    <section aria-label="Log">
      <h2>Log</h2>
      {mustSayWhy && (
        <div className="reason-form">
          <label htmlFor={id}>
            {outside.length === 1 ? 'A reading is' : `${outside.length} readings are`} outside. Why
            it is left so
          </label>
          <textarea
            id={id}
            rows={2}
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
            onKeyDown={(event) => event.stopPropagation()}
          />
        </div>
      )}
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          disabled={!last || (mustSayWhy && reason.trim() === '')}
          onClick={log}
        >
          Log it for this reel
        </button>
        <button type="button" className="button" onClick={() => void services.lineUp.save()}>
          Save the readings…
        </button>
        <button type="button" className="button" onClick={() => void services.lineUp.open()}>
          Open readings…
        </button>
      </div>
      <ol className="agree-history">
        {(reel?.lineUps ?? []).toReversed().map(({ at, says }) => (
          <li key={at}>
            <span className="dim">{at.slice(0, 16).replace('T', ' ')} UTC</span> {says}
          </li>
        ))}
      </ol>
    </section>
  )
}
