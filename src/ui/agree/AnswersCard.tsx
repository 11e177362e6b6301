import { useId, useState } from 'react'
import { useApp } from '../appContext.ts'

/** Answers that came back: as files, or as text from a mail. */
export const AnswersCard = () => {
  const { services } = useApp()
  const id = useId()
  const [text, setText] = useState<string>()
  return (
    <section aria-label="Answers">
      <h2>Answers that came back</h2>
      <div className="button-row">
        <button type="button" className="button" onClick={() => void services.review.pickAnswers()}>
          Open answers…
        </button>
        <button
          type="button"
          className="link"
          onClick={() => setText(text === undefined ? '' : undefined)}
        >
          {text === undefined ? 'paste one from a mail' : 'leave the text'}
        </button>
      </div>
      {text !== undefined && (
        <form
          className="reason-form"
          onSubmit={(event) => {
            event.preventDefault()
            void services.review.readAnswer(text).then(() => setText(undefined))
          }}
        >
          <label htmlFor={id}>The text of the answer, all of it</label>
          <textarea
            id={id}
            rows={4}
            value={text}
            onChange={(event) => setText(event.currentTarget.value)}
            onKeyDown={(event) => event.stopPropagation()}
          />
          <button type="submit" className="button" disabled={text.trim() === ''}>
            Read it
          </button>
        </form>
      )}
    </section>
  )
}
