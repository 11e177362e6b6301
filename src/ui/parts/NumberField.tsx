import { type KeyboardEvent, useRef, useState } from 'react'
import { formatNumber, parseNumber } from './numberText.ts'
import { coarseness, useDragNumber } from './useDragNumber.ts'

export type NumberFieldProps = {
  /** Said by screen readers and shown as a hint. */
  readonly label: string
  readonly value: number
  /** Whose number it is: a drag that goes on while this changes starts from the new owner's value. */
  readonly owner: string
  readonly reset: number
  readonly step: number
  readonly decimals: number
  readonly low: number
  readonly high: number
  /** What is written behind the number. */
  readonly unit?: string
  readonly isDisabled?: boolean
  /** `gesture` is the same for all changes that belong to one drag or one run of nudges. */
  readonly onChange: (value: number, gesture: string | undefined) => void
  readonly onGestureEnd: () => void
}

const clamp = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value))

let gestures = 0

/**
 * A number that can be typed, nudged (arrow keys; Shift coarse, Alt fine), dragged sideways, and
 * reset (Delete, or a double click).
 */
export const NumberField = (props: NumberFieldProps) => {
  const { label, value, owner, reset, step, decimals, low, high, unit, isDisabled = false } = props
  const [draft, setDraft] = useState<string>()
  const [isWrong, setIsWrong] = useState(false)
  const gesture = useRef<string | undefined>(undefined)
  const dragged = useRef({ owner, value })

  const rounded = (n: number) => Number(clamp(n, low, high).toFixed(decimals + 1))
  const gestureName = () => {
    gesture.current ??= `${label} ${gestures++}`
    return gesture.current
  }
  const endGesture = () => {
    if (gesture.current === undefined) return
    gesture.current = undefined
    props.onGestureEnd()
  }
  const drag = useDragNumber((steps) => {
    if (isDisabled) return
    if (dragged.current.owner !== owner) endGesture()
    const from = gesture.current === undefined ? value : dragged.current.value
    const to = clamp(from + steps * step, low, high)
    dragged.current = { owner, value: to }
    setDraft(undefined)
    props.onChange(rounded(to), gestureName())
  }, endGesture)

  const commit = () => {
    if (draft === undefined) return
    const typed = parseNumber(draft)
    setIsWrong(typed === undefined)
    if (typed === undefined) return
    setDraft(undefined)
    endGesture()
    props.onChange(clamp(typed, low, high), undefined)
  }
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key]
    if (direction !== undefined) {
      event.preventDefault()
      event.stopPropagation()
      setDraft(undefined)
      const move = direction * step * coarseness(event)
      props.onChange(rounded(value + move), gestureName())
      selectSoon(event.currentTarget)
    } else if (event.key === 'Enter') {
      event.preventDefault()
      commit()
      selectSoon(event.currentTarget)
    } else if (event.key === 'Escape' && draft !== undefined) {
      event.stopPropagation()
      setDraft(undefined)
      setIsWrong(false)
    } else if (event.key === 'Delete' && draft === undefined && isWhole(event.currentTarget)) {
      event.preventDefault()
      endGesture()
      props.onChange(reset, undefined)
    }
  }
  const text = draft ?? formatNumber(value, decimals) + (unit ?? '')
  return (
    <input
      className={`number${Math.abs(value - reset) < 1e-9 ? ' at-rest' : ''}${isWrong ? ' is-wrong' : ''}`}
      type="text"
      inputMode="decimal"
      role="spinbutton"
      aria-label={label}
      aria-valuenow={value}
      aria-valuetext={formatNumber(value, decimals) + (unit ?? '')}
      aria-valuemin={low}
      aria-valuemax={high}
      aria-invalid={isWrong}
      title={`${label}: type, drag sideways, or arrow keys (Shift coarse, Alt fine); double click resets`}
      disabled={isDisabled}
      value={text}
      onChange={(event) => {
        setDraft(event.currentTarget.value)
        setIsWrong(false)
      }}
      onFocus={(event) => event.currentTarget.select()}
      onBlur={() => {
        commit()
        setDraft(undefined)
        setIsWrong(false)
        endGesture()
      }}
      onDoubleClick={() => {
        setDraft(undefined)
        endGesture()
        props.onChange(reset, undefined)
      }}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => {
        if (event.key === 'ArrowUp' || event.key === 'ArrowDown') endGesture()
      }}
      {...drag}
    />
  )
}

/** Once the new text is there: the next thing typed takes its place, and Delete resets. */
const selectSoon = (input: HTMLInputElement): void => {
  requestAnimationFrame(() => {
    if (document.activeElement === input) input.select()
  })
}

const isWhole = (input: HTMLInputElement): boolean =>
  input.selectionStart === 0 && input.selectionEnd === input.value.length
