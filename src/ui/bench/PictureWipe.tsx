import type { KeyboardEvent, PointerEvent } from 'react'
import { arrangementOf, picturesShown } from '../../store/compared.ts'
import { setView } from '../../store/session.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'
import { coarseness } from '../parts/useDragNumber.ts'

/** How far an arrow key moves it, as a part of the width. */
const NUDGE = 0.01

const kept = (part: number): number => Math.min(1, Math.max(0, part))

/** What the wipe is between, as one text; none where nothing is wiped. */
const wordsOf = (state: AppState): string | undefined => {
  const [other, graded] = picturesShown(state)
  return arrangementOf(state) === 'wipe' && graded !== undefined
    ? `Wipe: ${other} left, ${graded} right`
    : undefined
}

/** The edge between two pictures: dragged, or moved by arrow keys; double click puts it in the middle. */
export const PictureWipe = () => {
  const { store } = useApp()
  const words = useAppState(wordsOf)
  const at = useAppState(({ view }) => view.wipeAt)
  if (words === undefined) return null
  const moveTo = (wipeAt: number) => setView(store, { wipeAt: kept(wipeAt) })
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const frame = event.currentTarget.parentElement?.getBoundingClientRect()
    if (frame && event.currentTarget.hasPointerCapture(event.pointerId))
      moveTo((event.clientX - frame.left) / frame.width)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = { ArrowLeft: -1, ArrowRight: 1 }[event.key]
    if (direction !== undefined) moveTo(at + direction * NUDGE * coarseness(event))
    else if (event.key === 'Home') moveTo(0)
    else if (event.key === 'End') moveTo(1)
    else if (event.key === 'Delete') moveTo(0.5)
    else return
    event.preventDefault()
  }
  return (
    <div
      className="wipe"
      role="slider"
      tabIndex={0}
      aria-label={words}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(at * 100)}
      aria-valuetext={`${formatNumber(at * 100, 0)} %`}
      title="drag or arrow keys (Shift coarse, Alt fine); double click or Delete: the middle"
      style={{ left: `${at * 100}%` }}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={onPointerMove}
      onDoubleClick={() => moveTo(0.5)}
      onKeyDown={onKeyDown}
    />
  )
}
