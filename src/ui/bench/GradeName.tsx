import { useDraftText } from '../parts/useDraftText.ts'

export type GradeNameProps = {
  readonly label: string
  readonly name: string
  readonly onCommit: (name: string) => void
}

/** A grade's name, to be typed over: it takes effect on Enter or on leaving it. */
export const GradeName = ({ label, name, onCommit }: GradeNameProps) => {
  const draft = useDraftText(name, onCommit)
  return (
    <input
      className="grade-name"
      aria-label={label}
      placeholder="no name"
      maxLength={100}
      value={draft.text}
      onChange={(event) => draft.type(event.currentTarget.value)}
      onBlur={draft.commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur()
        if (event.key === 'Escape') draft.drop()
      }}
    />
  )
}
