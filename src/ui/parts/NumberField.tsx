import { type KeyboardEvent, useId, useRef, useState } from 'react'
import { aimedAt, takeAim } from '../../store/selection.ts'
import { useApp } from '../appContext.ts'
import { NumberHint } from './NumberHint.tsx'
import { decimalsFor, limitWords, type NumberSteps, nudgeBy, stopAtLimits } from './numberSteps.ts'
import { formatNumber, parseNumber } from './numberText.ts'
import { coarseness, useDragNumber } from './useDragNumber.ts'
import { useGesture } from './useGesture.ts'

export type NumberFieldProps = NumberSteps & {
  /** Said by screen readers and shown as a hint. */
  readonly label: string
  readonly value: number
  /** Whose number it is: what is typed goes to whom it was begun on, and a drag ends with its owner. */
  readonly owner: string
  readonly reset: number
  /** What is written behind the number. */
  readonly unit?: string
  readonly isDisabled?: boolean
  /** `gesture` is the same for all changes that belong to one drag or one run of nudges. */
  readonly onChange: (value: number, gesture: string | undefined) => void
}

/** What is said beside a number, as long as it stays what it was when that was said. */
type Hint = { readonly says: string; readonly owner: string; readonly value: number }

/** What is typed, and how it is done to what was shown when that began. */
type Draft = { readonly text: string; readonly change: (value: number) => void }

/**
 * A number that can be typed, nudged (arrow keys; Shift coarse, Alt fine), dragged sideways, and
 * reset (Delete, or a double click). Where it stops at a limit it says so beside it.
 */
export const NumberField = (props: NumberFieldProps) => {
  const { label, value, owner, reset, unit = '', isDisabled = false } = props
  const { store } = useApp()
  const [draft, setDraft] = useState<Draft>()
  const [hint, setHint] = useState<Hint>()
  const [isWrong, setIsWrong] = useState(false)
  const [fineDecimals, setFineDecimals] = useState(props.decimals)
  const gesture = useGesture(label)
  const dragged = useRef({ owner, value })
  const isOver = useRef(false)
  const input = useRef<HTMLInputElement>(null)
  const hintId = useId()
  const decimals = Math.max(props.decimals, fineDecimals)

  const shown = formatNumber(value, decimals) + unit
  const isStill = hint?.owner === owner && Math.abs(hint.value - value) < 1e-9
  const says = isStill ? hint.says : undefined

  const settle = () => {
    setDraft(undefined)
    setIsWrong(false)
    setHint(undefined)
  }
  /** Changes the number as far as its limits allow. Returns where it went. */
  const change = (wanted: number, to: number, within: string | undefined): number => {
    const stopped = stopAtLimits(wanted, props, to)
    settle()
    if (stopped.at)
      setHint({ says: limitWords(stopped.at, props, unit), owner, value: stopped.value })
    if (stopped.value !== value || stopped.at === undefined) props.onChange(stopped.value, within)
    return stopped.value
  }
  const resetNumber = () => {
    settle()
    setFineDecimals(props.decimals)
    gesture.end()
    props.onChange(reset, undefined)
  }
  const drag = useDragNumber(
    (steps, times) => {
      if (isDisabled || isOver.current) return
      if (gesture.isOn() && dragged.current.owner !== owner) {
        isOver.current = true
        gesture.end()
        return
      }
      const from = gesture.isOn() ? dragged.current.value : value
      const to = decimalsFor(props, times)
      const wanted = from + steps * props.step
      const isPast = stopAtLimits(wanted, props, to).at !== undefined
      setFineDecimals(to)
      const went = change(wanted, to, gesture.name())
      dragged.current = { owner, value: isPast ? went : wanted }
    },
    () => {
      isOver.current = false
      gesture.end()
    },
  )

  const type = (text: string) => {
    settle()
    const aim = takeAim(store)
    const { onChange } = props
    const begun = (value: number) => aimedAt(store, aim, () => onChange(value, undefined))
    setDraft({ text, change: draft?.change ?? begun })
  }
  const commit = () => {
    if (draft === undefined) return
    const typed = parseNumber(draft.text)
    if (typed === undefined) {
      setIsWrong(true)
      setHint({ says: 'not a number', owner, value })
      return
    }
    gesture.end()
    setFineDecimals(props.decimals)
    const stopped = stopAtLimits(typed, props, 9)
    settle()
    if (stopped.at)
      setHint({ says: limitWords(stopped.at, props, unit), owner, value: stopped.value })
    draft.change(stopped.value)
  }
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key]
    if (direction !== undefined) {
      event.preventDefault()
      event.stopPropagation()
      const times = coarseness(event)
      const to = Math.max(decimals, decimalsFor(props, times))
      setFineDecimals(to)
      change(value + direction * nudgeBy(props, times), to, gesture.name())
      selectSoon(event.currentTarget)
    } else if (event.key === 'Enter') {
      event.preventDefault()
      if (draft === undefined || parseNumber(draft.text) !== undefined) event.currentTarget.blur()
      else commit()
    } else if (event.key === 'Escape' && (draft !== undefined || says !== undefined)) {
      event.stopPropagation()
      settle()
    } else if (event.key === 'Delete' && draft === undefined && isWhole(event.currentTarget)) {
      event.preventDefault()
      event.stopPropagation()
      resetNumber()
    }
  }
  return (
    <>
      <input
        className={`number${Math.abs(value - reset) < 1e-9 ? ' at-rest' : ''}${isWrong ? ' is-wrong' : ''}`}
        ref={input}
        type="text"
        inputMode="decimal"
        role="spinbutton"
        aria-label={label}
        aria-valuenow={value}
        aria-valuetext={shown}
        aria-valuemin={props.low}
        aria-valuemax={props.high}
        aria-invalid={isWrong}
        aria-describedby={says === undefined ? undefined : hintId}
        title={`${label}: type, drag sideways, or arrow keys (Shift coarse, Alt fine); double click resets`}
        disabled={isDisabled}
        value={draft?.text ?? shown}
        onChange={(event) => type(event.currentTarget.value)}
        onFocus={(event) => event.currentTarget.select()}
        onBlur={() => {
          if (draft === undefined) setHint(undefined)
          commit()
          setDraft(undefined)
          setIsWrong(false)
          setFineDecimals(props.decimals)
          gesture.end()
        }}
        onDoubleClick={resetNumber}
        onKeyDown={onKeyDown}
        onKeyUp={(event) => {
          if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return
          gesture.endSoon()
        }}
        {...drag}
      />
      {says !== undefined && <NumberHint id={hintId} by={input} says={says} />}
    </>
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
