import { useId, useState } from 'react'
import { dropOverride, setOverride } from '../../core/job/commands/setOverride.ts'
import type { ChecklistItem } from '../../core/transfer/checklist.ts'
import { perform } from '../../store/document.ts'
import { reelOf } from '../../store/queries.ts'
import { useApp } from '../appContext.ts'

/** The written reason to transfer all the same: given, shown with its date, taken back. */
export const ReasonField = ({ item }: { readonly item: ChecklistItem }) => {
  const { check, says, about, override } = item
  const { store } = useApp()
  const id = useId()
  const [text, setText] = useState<string>()
  const reelId = () => reelOf(store.getState())?.id
  const keep = () => {
    const reel = reelId()
    const at = new Date().toISOString()
    if (reel === undefined || text === undefined) return
    const given = { check, found: says, about, reason: text, at }
    if (perform(store, (job) => setOverride(job, reel, given))) setText(undefined)
  }
  const takeBack = () => {
    const reel = reelId()
    if (reel !== undefined) perform(store, (job) => dropOverride(job, reel, check))
  }
  if (text !== undefined)
    return (
      <form
        className="reason-form"
        onSubmit={(event) => {
          event.preventDefault()
          keep()
        }}
      >
        <label htmlFor={id}>Why the pass is made all the same</label>
        <textarea
          id={id}
          rows={2}
          // biome-ignore lint/a11y/noAutofocus: it is opened by the person to be typed in
          autoFocus
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
          onKeyDown={(event) => {
            event.stopPropagation()
            if (event.key === 'Escape') setText(undefined)
          }}
        />
        <div className="button-row">
          <button type="submit" className="button" disabled={text.trim() === ''}>
            Keep the reason
          </button>
          <button type="button" className="button" onClick={() => setText(undefined)}>
            Leave it
          </button>
        </div>
      </form>
    )
  return (
    <>
      {override && (
        <span className="reason">
          “{override.reason}” <span className="dim">{override.at.slice(0, 10)}</span>
        </span>
      )}
      <button type="button" className="link" onClick={() => setText(override?.reason ?? '')}>
        {override ? 'change the reason' : 'write a reason…'}
      </button>
      {override && (
        <button type="button" className="link" onClick={takeBack}>
          take the reason back
        </button>
      )}
    </>
  )
}
