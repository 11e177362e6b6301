import { useRef } from 'react'
import { endGesture } from '../../store/document.ts'
import { useApp } from '../appContext.ts'

/** Nudges that come sooner after one another are one run, and one step of undo. */
const RUN_MS = 600

let gestures = 0

export type Gesture = {
  /** The name under which changes become one undo step, until `end`. */
  readonly name: () => string
  readonly isOn: () => boolean
  readonly end: () => void
  /** Ends it unless it goes on within a moment: for a run of key presses. */
  readonly endSoon: () => void
}

/** One gesture at a time on a control: a drag, or a run of nudges. */
export const useGesture = (label: string): Gesture => {
  const { store } = useApp()
  const held = useRef<string | undefined>(undefined)
  const run = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const end = () => {
    clearTimeout(run.current)
    if (held.current === undefined) return
    held.current = undefined
    endGesture(store)
  }
  return {
    name: () => {
      clearTimeout(run.current)
      held.current ??= `${label} ${gestures++}`
      return held.current
    },
    isOn: () => held.current !== undefined,
    end,
    endSoon: () => {
      clearTimeout(run.current)
      run.current = setTimeout(end, RUN_MS)
    },
  }
}
