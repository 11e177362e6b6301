import { useEffect, useState } from 'react'

export type GradeNameProps = {
  readonly label: string
  readonly name: string
  readonly onCommit: (name: string) => void
}

/** A grade's name, to be typed over: it takes effect on Enter or on leaving it. */
export const GradeName = ({ label, name, onCommit }: GradeNameProps) => {
  const [text, setText] = useState(name)
  useEffect(() => setText(name), [name])
  return (
    <input
      className="grade-name"
      aria-label={label}
      placeholder="no name"
      maxLength={100}
      value={text}
      onChange={(event) => setText(event.currentTarget.value)}
      onBlur={() => {
        if (text !== name) onCommit(text)
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur()
        if (event.key === 'Escape') setText(name)
      }}
    />
  )
}
