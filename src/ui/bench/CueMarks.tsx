import { useEffect, useState } from 'react'
import { agreementOf } from '../../core/job/agreementOf.ts'
import { setAgreement } from '../../core/job/commands/setAgreement.ts'
import { setNote } from '../../core/job/commands/setNote.ts'
import { setScene } from '../../core/job/commands/setScene.ts'
import type { AgreementState, Cue } from '../../core/job/job.ts'
import { perform } from '../../store/document.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp } from '../appContext.ts'
import { STRINGS } from '../strings.ts'

/** What a person writes on a cue: its scene mark, whether it is agreed, and a note. */
export const CueMarks = ({ cue }: { cue: Cue }) => {
  const { store } = useApp()
  const [scene, setSceneText] = useState(cue.scene)
  const [note, setNoteText] = useState(cue.note)
  const standing = agreementOf(cue)
  useEffect(() => setSceneText(cue.scene), [cue.scene])
  useEffect(() => setNoteText(cue.note), [cue.note])
  return (
    <section className="cue-part cue-marks" aria-label="Marks">
      <h3>marks</h3>
      <div className="cue-fields">
        <label htmlFor="scene-mark">scene</label>
        <input
          id="scene-mark"
          className="text-input"
          maxLength={100}
          value={scene}
          onChange={(event) => setSceneText(event.currentTarget.value)}
          onBlur={() => {
            if (scene !== cue.scene)
              perform(store, (job) => setScene(job, editedCues(store), scene))
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') event.currentTarget.blur()
            if (event.key === 'Escape') setSceneText(cue.scene)
          }}
        />
        <label htmlFor="agreement">agreed</label>
        <select
          id="agreement"
          value={standing}
          onChange={(event) =>
            perform(store, (job) =>
              setAgreement(job, editedCues(store), event.currentTarget.value as AgreementState),
            )
          }
        >
          {standing === 'changed' && <option value="changed">{STRINGS.changedSince}</option>}
          {Object.entries(STRINGS.agreement).map(([state, words]) => (
            <option key={state} value={state}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <label className="note-field">
        note
        <textarea
          value={note}
          onChange={(event) => setNoteText(event.currentTarget.value)}
          onBlur={() => {
            if (note !== cue.note) perform(store, (job) => setNote(job, cue.id, note))
          }}
          onKeyDown={(event) => {
            if (event.key === 'Escape') event.currentTarget.blur()
          }}
        />
      </label>
    </section>
  )
}
