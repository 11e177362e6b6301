import { type PointerEvent, useRef } from 'react'

/** Pixels a pointer moves before a press counts as a drag. */
const THRESHOLD = 3

export type DragNumber = {
  readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void
  readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void
  readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void
  readonly onPointerCancel: (event: PointerEvent<HTMLElement>) => void
}

/** Shift moves ten times as far for the same travel, Alt a tenth. */
export const coarseness = (event: { shiftKey: boolean; altKey: boolean }): number =>
  event.shiftKey ? 10 : event.altKey ? 0.1 : 1

/**
 * Dragging sideways over an element changes a number: `onMove` gets the steps since the last
 * move, in fractions of a step, and the `coarseness` in them; `onEnd` closes the gesture.
 */
export const useDragNumber = (
  onMove: (steps: number, coarseness: number) => void,
  onEnd: () => void,
  pixelsPerStep = 2,
): DragNumber => {
  const drag = useRef<{ from: number; last: number; isMoving: boolean } | undefined>(undefined)
  const end = (event: PointerEvent<HTMLElement>) => {
    const wasMoving = drag.current?.isMoving ?? false
    drag.current = undefined
    if (!wasMoving) return
    event.currentTarget.releasePointerCapture(event.pointerId)
    onEnd()
  }
  return {
    onPointerDown: (event) => {
      if (event.button !== 0) return
      drag.current = { from: event.clientX, last: event.clientX, isMoving: false }
    },
    onPointerMove: (event) => {
      const current = drag.current
      if (!current) return
      if (!current.isMoving) {
        if (Math.abs(event.clientX - current.from) < THRESHOLD) return
        current.isMoving = true
        event.currentTarget.setPointerCapture(event.pointerId)
        // While a text field has the focus, each new value makes the page be laid out at once; and
        // after a drag, as after Enter, the keys are those of commands again.
        event.currentTarget.blur()
      }
      event.preventDefault()
      const times = coarseness(event)
      const steps = ((event.clientX - current.last) / pixelsPerStep) * times
      current.last = event.clientX
      onMove(steps, times)
    },
    onPointerUp: end,
    onPointerCancel: end,
  }
}
