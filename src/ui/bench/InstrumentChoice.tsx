import { useRef } from 'react'

export type InstrumentChoiceProps<Id extends string> = {
  readonly label: string
  readonly options: readonly { readonly id: Id; readonly label: string }[]
  readonly value: Id
  readonly isUnusual?: boolean
  readonly onChange: (id: Id) => void
}

/**
 * One of a few, in the head of an instrument. Chosen with the pointer, it lets go of the keyboard,
 * so that keys are commands again.
 */
export const InstrumentChoice = <Id extends string>({
  label,
  options,
  value,
  isUnusual,
  onChange,
}: InstrumentChoiceProps<Id>) => {
  const isByPointer = useRef(false)
  return (
    <select
      className={isUnusual ? 'instrument-choice is-unusual' : 'instrument-choice'}
      aria-label={label}
      value={value}
      onPointerDown={() => {
        isByPointer.current = true
      }}
      onKeyDown={() => {
        isByPointer.current = false
      }}
      onChange={(event) => {
        const chosen = options.find(({ id }) => id === event.currentTarget.value)
        if (chosen) onChange(chosen.id)
        if (isByPointer.current) event.currentTarget.blur()
      }}
    >
      {options.map((option) => (
        <option key={option.id} value={option.id}>
          {option.label}
        </option>
      ))}
    </select>
  )
}
