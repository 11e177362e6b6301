import { type PointerEvent, type RefObject, useRef } from 'react'
import type { CueId } from '../../core/job/recordIds.ts'
import { beginScrub, endScrub } from '../../store/ledgerChanges.ts'
import { frameAtOffset, type LedgerRows, offsetOfFrame } from '../../store/ledgerRows.ts'
import { jobOf, settledFrame } from '../../store/queries.ts'
import { type SelectMode, selectCue } from '../../store/selection.ts'
import { useApp } from '../appContext.ts'

/** Pixels a pointer moves before a press on the strip is a drag. */
const THRESHOLD = 4

type Press = {
  readonly cue: CueId | undefined
  readonly mode: SelectMode
  readonly y: number
  /** Where the film was under the line when it was taken hold of. */
  readonly offset: number
  isMoving: boolean
}

const modeOf = (event: { shiftKey: boolean; ctrlKey: boolean; metaKey: boolean }): SelectMode =>
  event.shiftKey ? 'range' : event.ctrlKey || event.metaKey ? 'toggle' : 'only'

const closest = (event: PointerEvent, selector: string): HTMLElement | null =>
  event.target instanceof Element ? event.target.closest<HTMLElement>(selector) : null

/**
 * What the pointer does on the ledger: a press on a row selects its cue; on the strip a drag takes
 * hold of the film and moves it under the line, and a press that does not move selects.
 */
export const useFilmPointer = (
  scroller: RefObject<HTMLDivElement | null>,
  rows: LedgerRows | undefined,
) => {
  const { store, services } = useApp()
  const press = useRef<Press | undefined>(undefined)

  const pick = (id: CueId | undefined, mode: SelectMode): void => {
    const cue = id === undefined ? undefined : jobOf(store.getState())?.cues[id]
    if (!cue) return
    selectCue(store, cue, mode)
    if (mode !== 'only') return
    services.pause()
    services.seek(settledFrame(store.getState(), cue))
  }
  const release = (event: PointerEvent): void => {
    const was = press.current
    press.current = undefined
    if (!was?.isMoving) return
    scroller.current?.releasePointerCapture(event.pointerId)
    endScrub(store)
  }
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0 || !rows) return
      const cue = closest(event, '[data-cue]')?.dataset.cue as CueId | undefined
      const mode = modeOf(event)
      if (!closest(event, '.strip')) {
        pick(cue, mode)
        return
      }
      const offset = offsetOfFrame(rows, store.getState().playhead)
      press.current = { cue, mode, y: event.clientY, offset, isMoving: false }
    },
    onPointerMove: (event: PointerEvent) => {
      const now = press.current
      if (!now || !rows) return
      const moved = event.clientY - now.y
      if (!now.isMoving) {
        if (Math.abs(moved) < THRESHOLD) return
        now.isMoving = true
        scroller.current?.setPointerCapture(event.pointerId)
        services.pause()
        beginScrub(store)
      }
      services.seek(frameAtOffset(rows, now.offset - moved))
    },
    onPointerUp: (event: PointerEvent) => {
      const was = press.current
      release(event)
      if (was && !was.isMoving) pick(was.cue, was.mode)
    },
    onPointerCancel: release,
  }
}
