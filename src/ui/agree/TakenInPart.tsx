import { useId } from 'react'
import type { AnswerConflict, PlannedAnswer } from '../../core/agreement/planAnswers.ts'
import type { SignatureStanding } from '../../core/agreement/signatureStands.ts'
import type { CueId } from '../../core/job/recordIds.ts'
import { setAgreeing, type TakenIn } from '../../store/agreeing.ts'
import { cueIndex, cuesOf, jobOf } from '../../store/queries.ts'
import { useApp, useAppState } from '../appContext.ts'
import { answerWords, SIGNATURE_WORDS } from './agreeWords.ts'

/** Answers that were read: what each says and what was changed since, to be taken in or left. */
export const TakenInPart = () => {
  const takenIn = useAppState(({ agreeing }) => agreeing.takenIn)
  return takenIn ? <Reading takenIn={takenIn} /> : null
}

const Reading = ({ takenIn }: { readonly takenIn: TakenIn }) => {
  const { services } = useApp()
  const { plan, signatures, choices } = takenIn
  const fresh = plan.rows.filter(({ outcome }) => outcome === 'new').length
  const isForged = signatures.includes('wrong')
  const undecided = plan.conflicts.filter(({ cue }) => !choices.has(cue)).length
  return (
    <section aria-label="Answers to take in" className="taken-in">
      <h2>Answers to take in</h2>
      <p role="status">
        {fresh} new, {plan.rows.length - fresh} that change nothing
        {undecided > 0 && `; reviewers differ on ${undecided}`}.
      </p>
      {isForged && (
        <p>▲ A signature is wrong: an answer was changed on its way. Ask for it again.</p>
      )}
      {plan.conflicts.map((conflict) => (
        <Conflict key={conflict.cue} conflict={conflict} takenIn={takenIn} />
      ))}
      <ol className="agree-history">
        {plan.rows.map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows of one plan, in its order
          <Row key={index} row={row} signature={signatures[index] ?? 'not signed'} />
        ))}
      </ol>
      <div className="button-row">
        <button
          type="button"
          className="button primary"
          disabled={fresh === 0 || undecided > 0 || isForged}
          onClick={services.review.apply}
        >
          Take {fresh === 1 ? 'it' : `all ${fresh}`} in
        </button>
        <button type="button" className="button" onClick={services.review.leave}>
          Leave them
        </button>
      </div>
    </section>
  )
}

const usePictureName = (id: CueId): string =>
  useAppState((state) => {
    const cue = jobOf(state)?.cues[id]
    return cue ? `Picture ${cueIndex(cuesOf(state), cue) + 1}` : 'A picture that is gone'
  })

const OUTCOMES = {
  new: '',
  'taken already': 'It was taken in before.',
  gone: 'The job has no such cue any more.',
}

type RowProps = { readonly row: PlannedAnswer; readonly signature: SignatureStanding }

const Row = ({ row: { cue, answer, outcome, changes }, signature }: RowProps) => {
  const name = usePictureName(cue)
  return (
    <li>
      <b>{name}</b> {answerWords(answer)}
      {answer.note !== '' && <p>“{answer.note}”</p>}
      {answer.marks.length > 0 && <p className="dim">With lines drawn on the picture.</p>}
      {changes.length > 0 && <p>≠ Changed since the pack was made: {changes.join(', ')}.</p>}
      <p className="dim">
        {SIGNATURE_WORDS[signature]}. {OUTCOMES[outcome]}
      </p>
    </li>
  )
}

type ConflictProps = { readonly conflict: AnswerConflict; readonly takenIn: TakenIn }

/** Whose word holds where reviewers are not of one mind. */
const Conflict = ({ conflict: { cue, answers }, takenIn }: ConflictProps) => {
  const { store } = useApp()
  const group = useId()
  const name = usePictureName(cue)
  const chosen = takenIn.choices.get(cue)
  const choose = (by: string) =>
    setAgreeing(store, {
      takenIn: { ...takenIn, choices: new Map([...takenIn.choices, [cue, by]]) },
    })
  return (
    <fieldset className="agree-grades">
      <legend>▲ {name}: reviewers differ. Whose word holds?</legend>
      {answers.map((answer) => (
        <label className="mark" key={answer.by}>
          <input
            type="radio"
            name={group}
            checked={chosen === answer.by}
            onChange={() => choose(answer.by)}
          />
          <span>
            {answerWords(answer)}
            {answer.note !== '' && ` “${answer.note}”`}
          </span>
        </label>
      ))}
    </fieldset>
  )
}
