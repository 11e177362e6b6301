import { type KeyboardEvent, type PointerEvent, useRef } from 'react'
import type { Grade } from '../../core/colour/grade.ts'
import type { GradeColumn } from '../../core/colour/gradeColumns.ts'
import {
  HANDLE_AT,
  type TransferHandle,
  transferLevel,
  withTransferHandle,
} from '../../core/colour/transferHandles.ts'
import { changeGrade } from '../../store/grading.ts'
import { useApp } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'
import { coarseness } from '../parts/useDragNumber.ts'
import { useGesture } from '../parts/useGesture.ts'
import { PLOT_HIGH, PLOT_LOW, type Scale } from './PlotGround.tsx'

/** How far an arrow key moves a level. */
const NUDGE = 0.005

const SHAPES: Readonly<Record<TransferHandle, string>> = {
  black: 'M-6 -5H6L0 6Z',
  mid: 'M0 -6L6 0L0 6L-6 0Z',
  white: 'M-6 5H6L0 -6Z',
}

type PlotHandleProps = {
  readonly handle: TransferHandle
  readonly column: GradeColumn
  /** Of the curve it is on. */
  readonly name: string
  readonly grade: Grade
  readonly cx: number
  readonly y: Scale
}

/** One handle of the plot: dragged up and down, or moved by arrow keys. */
export const PlotHandle = ({ handle, column, name, grade, cx, y }: PlotHandleProps) => {
  const { store } = useApp()
  const gesture = useGesture(`${handle} ${name}`)
  const drag = useRef<{ readonly at: number; readonly level: number } | undefined>(undefined)
  const level = transferLevel(grade, column, HANDLE_AT[handle])
  const set = (wanted: number) =>
    changeGrade(
      store,
      `${handle} ${name}`,
      (before) => withTransferHandle(before, column, handle, wanted),
      gesture.name(),
    )
  const onPointerMove = (event: PointerEvent) => {
    const from = drag.current
    if (!from) return
    const by = (y.invert(event.clientY) - y.invert(from.at)) * coarseness(event)
    drag.current = { at: event.clientY, level: from.level + by }
    set(from.level + by)
  }
  const onPointerEnd = () => {
    drag.current = undefined
    gesture.end()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key]
    if (direction === undefined) return
    event.preventDefault()
    event.stopPropagation()
    set(level + direction * NUDGE * coarseness(event))
  }
  const shown = Math.min(PLOT_HIGH, Math.max(PLOT_LOW, level))
  const percent = `${formatNumber(level * 100, 1)} %`
  return (
    <g
      className="plot-handle"
      role="slider"
      tabIndex={0}
      aria-label={`${handle} ${name}`}
      aria-orientation="vertical"
      aria-valuemin={-100}
      aria-valuemax={400}
      aria-valuenow={Math.round(level * 1000) / 10}
      aria-valuetext={percent}
      transform={`translate(${cx} ${y(shown)})`}
      onPointerDown={(event) => {
        if (event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        drag.current = { at: event.clientY, level }
      }}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerEnd}
      onPointerCancel={onPointerEnd}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => {
        if (event.key === 'ArrowUp' || event.key === 'ArrowDown') gesture.endSoon()
      }}
      onBlur={gesture.end}
    >
      <title>{`${handle}: ${percent}; drag up and down, arrow keys (Shift coarse, Alt fine)`}</title>
      <circle className="handle-reach" r={12} />
      <path d={SHAPES[handle]} />
    </g>
  )
}
