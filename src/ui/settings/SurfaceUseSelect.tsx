import { useState } from 'react'
import { keyOfUse as keyOf, type UseOption } from './surfaceUses.ts'

type SurfaceUseSelectProps<Use> = {
  /** Said by screen readers, where the place makes it clear to those who see. */
  readonly label: string
  readonly options: readonly UseOption<Use>[]
  readonly value: Use | undefined
  /** What stands for no choice; without it one must be made. */
  readonly none?: string
  readonly onChange: (use: Use | undefined) => void
}

/**
 * What a control does, from the list of all that it can be given. The list is made when it is gone
 * to: many of these stand beside each other, and the list is long.
 */
export const SurfaceUseSelect = <Use,>(props: SurfaceUseSelectProps<Use>) => {
  const { label, options, value, none, onChange } = props
  const [isWhole, setIsWhole] = useState(false)
  const key = value === undefined ? '' : keyOf(value)
  const chosen = options.filter(({ use }) => keyOf(use) === key)
  const shown = isWhole ? options : chosen
  const groups = [...new Set(shown.map(({ group }) => group))]
  const entries = (group: string) =>
    shown
      .filter((option) => option.group === group)
      .map(({ use, label: words }) => (
        <option key={keyOf(use)} value={keyOf(use)}>
          {words}
        </option>
      ))
  return (
    <select
      className="surface-use"
      aria-label={label}
      value={key}
      onFocus={() => setIsWhole(true)}
      onPointerDown={() => setIsWhole(true)}
      onChange={(event) => {
        const wanted = event.currentTarget.value
        onChange(options.find(({ use }) => keyOf(use) === wanted)?.use)
      }}
    >
      {none !== undefined && <option value="">{none}</option>}
      {key !== '' && chosen.length === 0 && (
        <option value={key}>a command that is not there</option>
      )}
      {groups.map((group) =>
        group === '' ? (
          entries(group)
        ) : (
          <optgroup key={group} label={group}>
            {entries(group)}
          </optgroup>
        ),
      )}
    </select>
  )
}
