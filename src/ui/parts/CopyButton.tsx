import { useState } from 'react'

export type CopyButtonProps = {
  readonly text: string
  /** What is copied, as a sentence begins. */
  readonly what: string
}

/** Copies a text, and says whether it went; where it cannot be copied it is shown to be taken by hand. */
export const CopyButton = ({ text, what }: CopyButtonProps) => {
  const [outcome, setOutcome] = useState<'copied' | 'refused'>()
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text)
      setOutcome('copied')
    } catch {
      setOutcome('refused')
    }
  }
  return (
    <>
      <button type="button" className="link" onClick={() => void copy()}>
        copy all of it
      </button>
      <span role="status">
        {outcome === 'copied' && ` ${what} is copied.`}
        {outcome === 'refused' && ' This browser does not let it be copied; here it is whole:'}
      </span>
      {outcome === 'refused' && <code className="whole-text">{text}</code>}
    </>
  )
}
