import { useId } from 'react'

export type ChoiceProps = {
  readonly label: string
  readonly options: readonly { readonly id: string; readonly label: string }[]
  readonly value: string
  readonly onChange: (id: string) => void
}

/** One of a few, from a list. */
export const Choice = ({ label, options, value, onChange }: ChoiceProps) => {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  )
}
