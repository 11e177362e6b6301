import { useState } from 'react'

export type WordCellProps = {
  readonly label: string
  readonly value: string
  readonly onCommit: (value: string) => void
}

/** A name or a unit in a table; it takes effect on Enter or on leaving it. */
export const WordCell = ({ label, value, onCommit }: WordCellProps) => {
  const [draft, setDraft] = useState<string>()
  const commit = () => {
    if (draft !== undefined && draft !== value) onCommit(draft)
    setDraft(undefined)
  }
  return (
    <input
      className="word-cell"
      aria-label={label}
      maxLength={100}
      value={draft ?? value}
      onChange={(event) => setDraft(event.currentTarget.value)}
      onBlur={commit}
      onKeyDown={(event) => {
        event.stopPropagation()
        if (event.key === 'Enter') commit()
        if (event.key === 'Escape') setDraft(undefined)
      }}
    />
  )
}
