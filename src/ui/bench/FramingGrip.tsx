import { type CSSProperties, type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react'
import {
  dragFrame,
  fieldsOfGrip,
  type Grip,
  nudgeFrame,
  resetGrip,
} from '../../core/framing/dragFrame.ts'
import type { Place } from '../../core/framing/frameBox.ts'
import { FRAMING_LIMITS } from '../../core/job/commands/setFraming.ts'
import type { CueId } from '../../core/job/recordIds.ts'
import type { Framing } from '../../core/picture/framing.ts'
import { endGesture } from '../../store/document.ts'
import { changeFraming } from '../../store/grading.ts'
import { currentCue } from '../../store/queries.ts'
import { useApp } from '../appContext.ts'
import { coarseness } from '../parts/useDragNumber.ts'

const ARROWS: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

export type FramingGripProps = {
  readonly grip: Grip
  readonly aspect: number
  readonly arm: number
  /** Pixels of the screen to a height of the scan. */
  readonly pixelsPerHeight: number
  readonly label: string
  readonly hint: string
  /** The number it stands for first, and what is said of all it changes. */
  readonly field: 'zoom' | 'pan' | 'rotation'
  readonly value: number
  readonly says: string
  readonly style: CSSProperties
}

type Drag = {
  readonly cue: CueId
  readonly from: Framing
  readonly by: Place
  readonly x: number
  readonly y: number
}

type Modifiers = { readonly ctrlKey: boolean; readonly metaKey: boolean }

const anchorOf = ({ ctrlKey, metaKey }: Modifiers) =>
  ctrlKey || metaKey ? ('middle' as const) : ('opposite' as const)

let gestures = 0

/** What the frame is taken by: dragged (Alt fine), or moved by the arrow keys once it has focus. */
export const FramingGrip = (props: FramingGripProps) => {
  const { grip, aspect, arm, pixelsPerHeight } = props
  const { store } = useApp()
  const drag = useRef<Drag | undefined>(undefined)
  const gesture = useRef<string | undefined>(undefined)

  const change = (to: Framing) => {
    gesture.current ??= `frame ${grip} ${gestures++}`
    const parts = Object.fromEntries(fieldsOfGrip(grip).map((field) => [field, to[field]]))
    changeFraming(store, LABELS[grip], (own) => ({ ...own, ...parts }), gesture.current)
  }
  const end = () => {
    drag.current = undefined
    if (gesture.current === undefined) return
    gesture.current = undefined
    endGesture(store)
  }
  const endRef = useRef(end)
  endRef.current = end
  useEffect(() => () => endRef.current(), [])

  const start = (event: PointerEvent): Drag | undefined => {
    const cue = currentCue(store.getState())
    const [x, y] = [event.clientX, event.clientY]
    return cue && { cue: cue.id, from: cue.framing, by: [0, 0], x, y }
  }
  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return
    event.stopPropagation()
    event.currentTarget.setPointerCapture(event.pointerId)
    drag.current = start(event)
  }
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    if (!drag.current) return
    if (currentCue(store.getState())?.id !== drag.current.cue) {
      // The reel plays on: what is dragged is the next cue's, from where it is.
      end()
      drag.current = start(event)
      return
    }
    const fine = event.altKey ? 0.1 : 1
    const [dx, dy] = [event.clientX - drag.current.x, event.clientY - drag.current.y]
    if (dx === 0 && dy === 0) return
    const by: Place = [
      drag.current.by[0] + (dx * fine) / pixelsPerHeight,
      drag.current.by[1] + (dy * fine) / pixelsPerHeight,
    ]
    drag.current = { ...drag.current, by, x: event.clientX, y: event.clientY }
    change(dragFrame(drag.current.from, aspect, { grip, by, anchor: anchorOf(event), arm }))
  }
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const cue = currentCue(store.getState())
    const arrow = ARROWS[event.key]
    if (!cue || drag.current || (!arrow && event.key !== 'Delete')) return
    event.preventDefault()
    event.stopPropagation()
    if (arrow) {
      const times = coarseness(event)
      const by: Place = [arrow[0] * times, arrow[1] * times]
      change(nudgeFrame(cue.framing, aspect, grip, by, anchorOf(event)))
      return
    }
    end()
    change(resetGrip(cue.framing, aspect, grip))
    end()
  }
  return (
    <div
      className={`framing-grip ${grip === 'move' || grip === 'turn' ? grip : 'corner'}`}
      role="slider"
      tabIndex={0}
      aria-label={props.label}
      aria-valuenow={props.value}
      aria-valuemin={FRAMING_LIMITS[props.field][0]}
      aria-valuemax={FRAMING_LIMITS[props.field][1]}
      aria-valuetext={props.says}
      title={props.hint}
      style={props.style}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={end}
      onPointerCancel={end}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => {
        if (ARROWS[event.key]) end()
      }}
      onBlur={end}
    />
  )
}

const LABELS: Readonly<Record<Grip, string>> = {
  move: 'pan and tilt',
  turn: 'rotation',
  'top-left': 'zoom',
  'top-right': 'zoom',
  'bottom-right': 'zoom',
  'bottom-left': 'zoom',
}
