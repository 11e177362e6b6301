import { useEffect, useState } from 'react'
import { moveBoundary } from '../../core/job/commands/moveBoundary.ts'
import { setNote } from '../../core/job/commands/setNote.ts'
import { setRamp } from '../../core/job/commands/setRamp.ts'
import type { Cue } from '../../core/job/job.ts'
import { type Frame, frame } from '../../core/time/frame.ts'
import { endGesture, perform } from '../../store/document.ts'
import { cueIndex, cuesOf, currentCue, isDoubtful } from '../../store/queries.ts'
import { editedCues } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { CommandButton } from '../parts/CommandButton.tsx'
import { NumberField } from '../parts/NumberField.tsx'
import { formatNumber } from '../parts/numberText.ts'
import { STRINGS } from '../strings.ts'

/** The cue itself: how it begins, over how many frames, and the note on it. */
export const CueSheet = () => {
  const { store, services } = useApp()
  const cue = useAppState(currentCue)
  const cues = useAppState(cuesOf)
  if (!cue) return null
  const isFirst = cue.first === 0
  return (
    <section className="panel cue-panel" aria-label="Cue">
      <h2>
        cue {cueIndex(cues, cue) + 1} · {STRINGS.boundary[cue.boundary.kind]}
        {isDoubtful(cue) && (
          <span className="strong"> ? {formatNumber(cue.boundary.confidence * 100, 0)} % sure</span>
        )}
      </h2>
      <div className="cue-fields">
        <span>first frame</span>
        <NumberField
          label="first frame"
          value={cue.first}
          owner={cue.id}
          reset={cue.first}
          step={1}
          decimals={0}
          low={0}
          high={Number.MAX_SAFE_INTEGER}
          isDisabled={isFirst}
          onChange={(value, gesture) => {
            const first: Frame = frame(Math.round(value))
            if (perform(store, (job) => moveBoundary(job, cue.id, first), gesture))
              services.seek(first)
          }}
          onGestureEnd={() => endGesture(store)}
        />
        <span>ramp</span>
        <NumberField
          label="ramp in frames"
          value={cue.ramp}
          owner={cue.id}
          reset={0}
          step={1}
          decimals={0}
          low={0}
          high={10_000}
          unit=" fr"
          isDisabled={isFirst}
          onChange={(value, gesture) =>
            perform(store, (job) => setRamp(job, editedCues(store), Math.round(value)), gesture)
          }
          onGestureEnd={() => endGesture(store)}
        />
      </div>
      <div className="button-row">
        <CommandButton id="split" label="Split" />
        <CommandButton id="join" label="Join" />
        {isDoubtful(cue) && (
          <>
            <CommandButton id="keep" label="Keep" />
            <CommandButton id="drop" label="Drop" />
          </>
        )}
      </div>
      <NoteField cue={cue} key={cue.id} />
    </section>
  )
}

const NoteField = ({ cue }: { cue: Cue }) => {
  const { store } = useApp()
  const [text, setText] = useState(cue.note)
  useEffect(() => setText(cue.note), [cue.note])
  const commit = () => {
    if (text !== cue.note) perform(store, (job) => setNote(job, cue.id, text))
  }
  return (
    <label className="note-field">
      note
      <textarea
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Escape') event.currentTarget.blur()
        }}
      />
    </label>
  )
}
