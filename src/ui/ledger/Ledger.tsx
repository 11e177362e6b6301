import {
  type KeyboardEvent,
  type PointerEvent,
  useCallback,
  useEffect,
  useRef,
  useState,
} from 'react'
import type { Cue } from '../../core/job/job.ts'
import { liveVerdictOf, verdictOf } from '../../store/checkKey.ts'
import { cueIndex, cuesOf, currentCue, endOfCue, reelOf } from '../../store/queries.ts'
import { type SelectMode, selectCue } from '../../store/selection.ts'
import { useApp, useAppState } from '../appContext.ts'
import { useElementSize } from '../parts/useElementSize.ts'
import { STRINGS } from '../strings.ts'
import { LedgerRow } from './LedgerRow.tsx'
import { frameOffset, ROW_HEIGHT, scrollForLine, visibleRows } from './rowLayout.ts'

const modeOf = (event: { shiftKey: boolean; ctrlKey: boolean; metaKey: boolean }): SelectMode =>
  event.shiftKey ? 'range' : event.ctrlKey || event.metaKey ? 'toggle' : 'only'

/** The list of cues: the strip and the numbers, drawn only where it is looked at. */
export const Ledger = () => {
  const { store, services } = useApp()
  const scroller = useRef<HTMLDivElement>(null)
  const { height } = useElementSize(scroller)
  const [scrollTop, setScrollTop] = useState(0)
  const cues = useAppState(cuesOf)
  const reel = useAppState(reelOf)
  const playhead = useAppState((state) => state.playhead)
  const selection = useAppState((state) => state.selection)
  const current = useAppState(currentCue)
  useAppState((state) => state.verdicts)
  useAppState((state) => state.live)
  useAppState((state) => state.history?.job.info)

  const index = current ? cueIndex(cues, current) : 0
  const offset =
    current && reel ? frameOffset(current, index, endOfCue(cues, current, reel), playhead) : 0

  useEffect(() => {
    scroller.current?.scrollTo({ top: scrollForLine(offset, height, cues.length) })
  }, [offset, height, cues.length])

  const onPick = useCallback(
    (cue: Cue, event: PointerEvent) => {
      const mode = modeOf(event)
      selectCue(store, cue, mode)
      if (mode === 'only') {
        services.pause()
        services.seek(cue.first)
      }
    },
    [store, services],
  )
  const onKeyDown = (event: KeyboardEvent) => {
    const direction = { ArrowUp: -1, ArrowDown: 1 }[event.key]
    if (direction === undefined || event.altKey) return
    event.preventDefault()
    const target = cues[index + direction]
    if (!target) return
    if (event.shiftKey) selectCue(store, target, 'range')
    else selectCue(store, target, 'only')
    services.seek(target.first)
  }
  if (!reel) return null
  const { from, to } = visibleRows(scrollTop, height, cues.length)
  const state = store.getState()
  const selected = new Set(selection)
  return (
    <section className="ledger" aria-label={STRINGS.ledger.name}>
      <div
        role="grid"
        aria-label={STRINGS.ledger.name}
        aria-rowcount={cues.length + 1}
        aria-multiselectable="true"
        aria-activedescendant={current ? `row-${current.id}` : undefined}
        tabIndex={0}
        className="ledger-grid"
        ref={scroller}
        onScroll={(event) => setScrollTop(event.currentTarget.scrollTop)}
        onKeyDown={onKeyDown}
      >
        <div role="rowgroup" className="ledger-top">
          <div role="row" aria-rowindex={1} className="ledger-head">
            {Object.entries(STRINGS.ledger)
              .filter(([key]) => key !== 'name')
              .map(([key, label]) => (
                <span role="columnheader" key={key}>
                  {label}
                </span>
              ))}
          </div>
        </div>
        <div role="rowgroup" className="ledger-rows">
          <div
            role="presentation"
            className="ledger-length"
            style={{ height: cues.length * ROW_HEIGHT }}
          >
            {cues.slice(from, to).map((cue, i) => (
              <LedgerRow
                key={cue.id}
                cue={cue}
                index={from + i}
                end={endOfCue(cues, cue, reel)}
                reel={reel}
                verdict={verdictOf(state, cue)}
                live={liveVerdictOf(state, cue)}
                isCurrent={cue === current}
                isSelected={selected.has(cue.id)}
                onPick={onPick}
              />
            ))}
            <div className="line" style={{ transform: `translateY(${offset}px)` }} />
          </div>
        </div>
      </div>
    </section>
  )
}
