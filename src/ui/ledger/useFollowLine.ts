import { type RefObject, useLayoutEffect, useRef } from 'react'
import { type LedgerRows, offsetOfFrame } from '../../store/ledgerRows.ts'
import { useApp } from '../appContext.ts'

/**
 * Moves the film so that the frame under the line is under the line. It goes by the store itself:
 * nothing is drawn anew for a frame of playing.
 */
export const useFollowLine = (
  scroller: RefObject<HTMLDivElement | null>,
  line: RefObject<HTMLDivElement | null>,
  rows: LedgerRows | undefined,
  viewHeight: number,
): void => {
  const { store } = useApp()
  const followed = useRef('')
  useLayoutEffect(() => {
    if (!rows || viewHeight === 0) return
    const follow = (): void => {
      const offset = offsetOfFrame(rows, store.getState().playhead)
      if (line.current) line.current.style.transform = `translateY(${offset}px)`
      scroller.current?.scrollTo({ top: offset })
    }
    // Scrolling lays the page out: not for each step of a drag, which moves no row.
    const isStill = followed.current === `${rows.height} ${viewHeight}`
    followed.current = `${rows.height} ${viewHeight}`
    if (!isStill || store.getState().gesture === undefined) follow()
    return store.subscribe((state, before) => {
      if (state.playhead !== before.playhead) follow()
    })
  }, [store, scroller, line, rows, viewHeight])
}
