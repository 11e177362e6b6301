import { useEffect, useId, useState } from 'react'

export type TextFieldProps = {
  readonly label: string
  readonly value: string
  readonly hint?: string
  /** Returns false where the text is refused; the field then shows the value as it was. */
  readonly onCommit: (text: string) => boolean
}

/** A line of text that takes effect on Enter or on leaving it. */
export const TextField = ({ label, value, hint, onCommit }: TextFieldProps) => {
  const id = useId()
  const [text, setText] = useState(value)
  useEffect(() => setText(value), [value])
  const commit = () => {
    if (text !== value && !onCommit(text)) setText(value)
  }
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit()
          if (event.key === 'Escape') setText(value)
        }}
      />
      {hint && <span className="dim">{hint}</span>}
    </div>
  )
}
