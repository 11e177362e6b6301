import { useState } from 'react'
import { parseNumber } from './numberText.ts'

export type NumberCellProps = {
  readonly label: string
  readonly value: number | undefined
  readonly onCommit: (value: number | undefined) => void
}

const shown = (value: number | undefined): string =>
  value === undefined ? '' : String(Number(value.toFixed(6))).replace('-', '−')

/** A number in a table, typed; it takes effect on Enter or on leaving it, and may be empty. */
export const NumberCell = ({ label, value, onCommit }: NumberCellProps) => {
  const [draft, setDraft] = useState<string>()
  const parsed = draft === undefined ? value : parseNumber(draft)
  const isWrong = draft !== undefined && draft.trim() !== '' && parsed === undefined
  const commit = () => {
    if (draft === undefined || isWrong) return
    setDraft(undefined)
    if (parsed !== value) onCommit(parsed)
  }
  return (
    <input
      className="number-cell"
      inputMode="decimal"
      aria-label={label}
      aria-invalid={isWrong}
      value={draft ?? shown(value)}
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
