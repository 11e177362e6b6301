import { useEffect, useId, useState } from 'react'
import { agreementOf } from '../../core/agreement/agreementOf.ts'
import type { AnswerSays } from '../../core/agreement/answer.ts'
import type { Cue } from '../../core/job/job.ts'
import { REVIEWER_LIMIT, WORDS_LIMIT } from '../../core/job/limits.ts'
import { setAgreeing } from '../../store/agreeing.ts'
import { unsaidOf } from '../../store/agreeRows.ts'
import { sayHere } from '../../store/answering.ts'
import { cueIndex, cuesOf, currentCue, jobOf } from '../../store/queries.ts'
import { setView } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { STRINGS } from '../strings.ts'

/** What is said of the picture under the line: agreed, or what should be otherwise. */
export const AgreeAnswer = () => {
  const cue = useAppState(currentCue)
  return (
    <div className="agree-answer">
      <Reviewer />
      {cue && <CueAnswer key={cue.id} cue={cue} />}
    </div>
  )
}

const Reviewer = () => {
  const { store } = useApp()
  const id = useId()
  const by = useAppState(({ agreeing }) => agreeing.by)
  const left = useAppState(
    (state) =>
      unsaidOf(
        state,
        cuesOf(state).map((cue) => cue.id),
      ).length,
  )
  const agreeAll = () => {
    const state = store.getState()
    sayHere(
      store,
      unsaidOf(
        state,
        cuesOf(state).map((cue) => cue.id),
      ),
      'agreed',
    )
  }
  return (
    <div className="button-row">
      <label htmlFor={id}>Your name</label>
      <input
        id={id}
        className="text-input"
        autoComplete="name"
        maxLength={REVIEWER_LIMIT}
        value={by}
        onChange={(event) => setAgreeing(store, { by: event.currentTarget.value })}
        onKeyDown={(event) => event.stopPropagation()}
      />
      <span className="spacer" />
      <button type="button" className="button" disabled={left === 0} onClick={agreeAll}>
        Agree to all the rest
      </button>
    </div>
  )
}

const CueAnswer = ({ cue }: { readonly cue: Cue }) => {
  const { store } = useApp()
  const id = useId()
  const [note, setNote] = useState('')
  const [alternate, setAlternate] = useState<string>()
  const drawing = useAppState(({ agreeing }) => agreeing.drawing)
  const number = useAppState((state) => cueIndex(cuesOf(state), cue) + 1)
  const standing = useAppState((state) => {
    const job = jobOf(state)
    return job ? agreementOf(job, cue) : 'open'
  })
  useEffect(() => () => setAgreeing(store, { drawing: undefined }), [store])
  const say = (says: AnswerSays) => {
    const marks = drawing?.marks ?? []
    const drawn = marks.length > 0 ? { marks, frame: drawing?.frame ?? null } : {}
    if (!sayHere(store, [cue.id], says, { note: note.trim(), alternate, ...drawn })) return
    setNote('')
    setAgreeing(store, { drawing: undefined })
  }
  return (
    <>
      <p className="agree-standing" role="status">
        Picture {number}: {STRINGS.agreement[standing]}
      </p>
      {cue.alternates.length > 0 && <Grades cue={cue} chosen={alternate} onChoose={setAlternate} />}
      <label htmlFor={id}>What should be otherwise, or anything else to say</label>
      <textarea
        id={id}
        rows={2}
        className="text-input"
        maxLength={WORDS_LIMIT}
        value={note}
        onChange={(event) => setNote(event.currentTarget.value)}
        onKeyDown={(event) => {
          event.stopPropagation()
          if (event.key === 'Escape') event.currentTarget.blur()
        }}
      />
      <div className="button-row">
        <button type="button" className="button primary" onClick={() => say('agreed')}>
          {STRINGS.agreement.agreed}
        </button>
        <button type="button" className="button primary" onClick={() => say('asked')}>
          {STRINGS.agreement.asked}
        </button>
        <DrawButtons />
        <span className="spacer" />
        {standing !== 'open' && (
          <button type="button" className="link" onClick={() => say('open')}>
            take it back
          </button>
        )}
      </div>
    </>
  )
}

const DrawButtons = () => {
  const { store } = useApp()
  const drawing = useAppState(({ agreeing }) => agreeing.drawing)
  const toggle = () => {
    const { playhead } = store.getState()
    const { marks = [], frame = playhead, isOpen = false } = drawing ?? {}
    setAgreeing(store, { drawing: { marks, frame, isOpen: !isOpen } })
  }
  return (
    <>
      <button
        type="button"
        className="button"
        aria-pressed={drawing?.isOpen ?? false}
        onClick={toggle}
      >
        Draw on the picture
      </button>
      {drawing && drawing.marks.length > 0 && (
        <button
          type="button"
          className="button"
          onClick={() =>
            setAgreeing(store, { drawing: { ...drawing, marks: drawing.marks.slice(0, -1) } })
          }
        >
          Take the last line back
        </button>
      )}
    </>
  )
}

type GradesProps = {
  readonly cue: Cue
  readonly chosen: string | undefined
  readonly onChoose: (alternate: string | undefined) => void
}

/** The grades that are kept of a cue, to be looked at and preferred. */
const Grades = ({ cue, chosen, onChoose }: GradesProps) => {
  const { store } = useApp()
  const name = useId()
  const choose = (alternate: string | undefined) => {
    onChoose(alternate)
    const index = cue.alternates.findIndex((each) => each.name === alternate)
    setView(
      store,
      index < 0
        ? { arrangement: 'alone', against: { kind: 'scanned' } }
        : { arrangement: 'wipe', against: { kind: 'alternate', index }, wipeAt: 1 },
    )
  }
  return (
    <fieldset className="agree-grades">
      <legend>There is more than one grade of it. Which is meant?</legend>
      <label className="mark">
        <input
          type="radio"
          name={name}
          checked={chosen === undefined}
          onChange={() => choose(undefined)}
        />
        <span>{cue.gradeName === '' ? 'as it is' : cue.gradeName}</span>
      </label>
      {cue.alternates.map((each) => (
        <label className="mark" key={each.name}>
          <input
            type="radio"
            name={name}
            checked={chosen === each.name}
            onChange={() => choose(each.name)}
          />
          <span>{each.name === '' ? 'another, without a name' : each.name}</span>
        </label>
      ))}
    </fieldset>
  )
}
