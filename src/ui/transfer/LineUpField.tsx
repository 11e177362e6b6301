import { useState } from 'react'
import { logLineUp } from '../../core/job/commands/logLineUp.ts'
import { perform } from '../../store/document.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'

/** Logs a line-up of the scanner in words, and tells the last one. */
export const LineUpField = () => {
  const { store } = useApp()
  const [says, setSays] = useState('')
  const last = useAppState((state) => reelOf(state)?.lineUps.at(-1))
  const log = () => {
    const reel = reelOf(store.getState())
    if (!reel) return
    const lineUp = { at: new Date().toISOString(), says }
    if (perform(store, (job) => logLineUp(job, reel.id, lineUp))) setSays('')
  }
  return (
    <form
      className="reason-form"
      onSubmit={(event) => {
        event.preventDefault()
        log()
      }}
    >
      {last && (
        <p>
          “{last.says}” <span className="dim">{last.at.slice(0, 10)}</span>
        </p>
      )}
      <label htmlFor="line-up-field">What was set and read at the line-up</label>
      <textarea
        id="line-up-field"
        rows={2}
        value={says}
        onChange={(event) => setSays(event.currentTarget.value)}
        onKeyDown={(event) => event.stopPropagation()}
      />
      <button type="submit" className="button" disabled={says.trim() === ''}>
        Log the line-up
      </button>
    </form>
  )
}
