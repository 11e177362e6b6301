import { agreementOf } from '../../core/agreement/agreementOf.ts'
import type { AnswerSays } from '../../core/agreement/answer.ts'
import { setNote } from '../../core/job/commands/setNote.ts'
import { setScene } from '../../core/job/commands/setScene.ts'
import type { Cue } from '../../core/job/job.ts'
import { sayHere } from '../../store/answering.ts'
import { perform } from '../../store/document.ts'
import { jobOf } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { useDraftText } from '../parts/useDraftText.ts'
import { STRINGS } from '../strings.ts'

/** What a person writes on a cue: its scene mark, whether it is agreed, and a note. */
export const CueMarks = ({ cue }: { cue: Cue }) => {
  const { store } = useApp()
  const scene = useDraftText(cue.scene, (text) =>
    perform(store, (job) => setScene(job, editedCues(store), text)),
  )
  const note = useDraftText(cue.note, (text) => perform(store, (job) => setNote(job, cue.id, text)))
  const standing = useAppState((state) => {
    const job = jobOf(state)
    return job ? agreementOf(job, cue) : 'open'
  })
  return (
    <section className="cue-part cue-marks" aria-label="Marks">
      <h3>marks</h3>
      <div className="cue-fields">
        <label htmlFor="scene-mark">scene</label>
        <input
          id="scene-mark"
          className="text-input"
          maxLength={100}
          value={scene.text}
          onChange={(event) => scene.type(event.currentTarget.value)}
          onBlur={scene.commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') event.currentTarget.blur()
            if (event.key === 'Escape') scene.drop()
          }}
        />
        <label htmlFor="agreement">agreed</label>
        <select
          id="agreement"
          value={standing}
          onChange={(event) =>
            sayHere(store, editedCues(store), event.currentTarget.value as AnswerSays)
          }
        >
          {Object.entries(STRINGS.agreement)
            .filter(([state]) => state !== 'changed' || standing === 'changed')
            .map(([state, words]) => (
              <option key={state} value={state}>
                {words}
              </option>
            ))}
        </select>
      </div>
      <label className="note-field">
        note
        <textarea
          value={note.text}
          onChange={(event) => note.type(event.currentTarget.value)}
          onBlur={note.commit}
          onKeyDown={(event) => {
            if (event.key === 'Escape') event.currentTarget.blur()
          }}
        />
      </label>
    </section>
  )
}
