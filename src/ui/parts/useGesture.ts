import { useRef } from 'react'
import { endGesture } from '../../store/document.ts'
import { useApp } from '../appContext.ts'

let gestures = 0

export type Gesture = {
  /** The name under which changes become one undo step, until `end`. */
  readonly name: () => string
  readonly end: () => void
}

/** One gesture at a time on a control: a drag, or a run of nudges. */
export const useGesture = (label: string): Gesture => {
  const { store } = useApp()
  const held = useRef<string | undefined>(undefined)
  return {
    name: () => {
      held.current ??= `${label} ${gestures++}`
      return held.current
    },
    end: () => {
      if (held.current === undefined) return
      held.current = undefined
      endGesture(store)
    },
  }
}
