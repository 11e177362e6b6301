import { type KeyboardEvent, useMemo, useRef, useState } from 'react'
import type { CueId } from '../../core/job/recordIds.ts'
import { flashesOf, liveVerdictOf, verdictOf } from '../../store/checkKey.ts'
import { agreementOfBits } from '../../store/cueBits.ts'
import { setLedger } from '../../store/ledgerChanges.ts'
import {
  cueOfRow,
  cuePlace,
  isListed,
  type LedgerRows,
  ledgerRowsOf,
  listedBeside,
  rowEnd,
  rowHeight,
  rowOfPlace,
  rowTop,
} from '../../store/ledgerRows.ts'
import { cueIndex, currentCue, reelOf, settledFrame } from '../../store/queries.ts'
import { isSelected, selectCue } from '../../store/selection.ts'
import { standingOf } from '../../store/standing.ts'
import type { AppState } from '../../store/state.ts'
import { useApp, useAppState } from '../appContext.ts'
import { useElementSize } from '../parts/useElementSize.ts'
import { STRINGS } from '../strings.ts'
import { LedgerRow, rowId } from './LedgerRow.tsx'
import {
  leaderHeight,
  rowsToDraw,
  SCROLL_STEP,
  sceneEdges,
  stillSlots,
  tailHeight,
} from './rowLayout.ts'
import { stillHeightOf } from './StillPair.tsx'
import { useFilmPointer } from './useFilmPointer.ts'
import { useFollowLine } from './useFollowLine.ts'

const COLUMNS = Object.entries(STRINGS.ledger).filter(([key]) => key !== 'name')

/** The list of cues: the strip and the numbers, drawn only where it is looked at. */
export const Ledger = () => {
  const { store, services } = useApp()
  const scroller = useRef<HTMLDivElement>(null)
  const line = useRef<HTMLDivElement>(null)
  const { height } = useElementSize(scroller)
  const leader = leaderHeight(height)
  const rows = useAppState(ledgerRowsOf)
  const current = useAppState(currentCue)
  /** The scroll position, in whole steps, so that rows are drawn anew only now and then. */
  const [scrolled, setScrolled] = useState(0)
  useFollowLine(scroller, line, rows, height)
  const pointer = useFilmPointer(scroller, rows)

  const onKeyDown = (event: KeyboardEvent) => {
    const direction = { ArrowUp: -1, ArrowDown: 1 }[event.key] as 1 | -1 | undefined
    if (direction === undefined || event.altKey || !rows) return
    event.preventDefault()
    const target = listedBeside(rows, store.getState().playhead, direction)
    if (!target) return
    const isAdding = event.ctrlKey || event.metaKey
    if (event.shiftKey) selectCue(store, target, 'range')
    else if (!isAdding) selectCue(store, target, 'only')
    else if (!isSelected(store.getState(), target.id)) selectCue(store, target, 'toggle')
    services.seek(settledFrame(store.getState(), target))
  }
  return (
    <section className="ledger" aria-label={STRINGS.ledger.name}>
      <div
        role="grid"
        aria-label={STRINGS.ledger.name}
        aria-rowcount={(rows?.count ?? 0) + 1}
        aria-multiselectable="true"
        aria-activedescendant={
          rows && current && isListed(rows, current) ? rowId(current) : undefined
        }
        tabIndex={0}
        className="ledger-grid"
        ref={scroller}
        onScroll={({ currentTarget }) =>
          setScrolled(Math.floor(currentTarget.scrollTop / SCROLL_STEP) * SCROLL_STEP)
        }
        onKeyDown={onKeyDown}
        {...pointer}
      >
        <div role="rowgroup" className="ledger-top">
          <div role="row" aria-rowindex={1} className="ledger-head">
            {COLUMNS.map(([key, label]) => (
              <span role="columnheader" key={key}>
                {label}
              </span>
            ))}
          </div>
        </div>
        <div
          role="rowgroup"
          className="ledger-rows"
          style={{
            paddingTop: leader,
            paddingBottom: tailHeight(height),
            backgroundPositionY: leader,
          }}
        >
          <div role="presentation" className="ledger-length" style={{ height: rows?.height ?? 0 }}>
            {rows && <Rows rows={rows} top={scrolled - leader} viewHeight={height} />}
            <div className="line" ref={line} />
          </div>
        </div>
      </div>
      {rows?.count === 0 && <NothingListed />}
    </section>
  )
}

const NothingListed = () => {
  const { store } = useApp()
  const filter = useAppState((state) => state.ledger.filter)
  return (
    <div className="nothing-listed">
      <p role="status">No cue is listed: {STRINGS.nothingListed[filter]}</p>
      <button type="button" className="button" onClick={() => setLedger(store, { filter: 'all' })}>
        List all cues
      </button>
    </div>
  )
}

type RowsProps = {
  readonly rows: LedgerRows
  /** Where the view begins, from the top of the first row, in whole steps. */
  readonly top: number
  readonly viewHeight: number
}

const selectionOf = ({ selection }: AppState): readonly CueId[] => selection

/** The rows in view. They do not follow the line: only where a cue begins under it they change. */
const Rows = ({ rows, top, viewHeight }: RowsProps) => {
  const { store } = useApp()
  const reel = useAppState(reelOf)
  const current = useAppState(currentCue)
  const looked = useAppState((state) => state.looked)
  const selection = useAppState(selectionOf)
  const selected = useMemo(() => new Set(selection), [selection])
  useAppState((state) => state.verdicts)
  useAppState((state) => state.live)
  useAppState((state) => state.history?.job.info)
  if (!reel) return null
  const state = store.getState()
  const { bits } = standingOf(state)
  const stillHeight = stillHeightOf(reel.media.displayAspect)
  const lineRow = current && rowOfPlace(rows, cueIndex(rows.cues, current))
  return rowsToDraw(rows, top, viewHeight, lineRow).map((row) => {
    const cue = cueOfRow(rows, row)
    if (!cue) return null
    const place = cuePlace(rows, row)
    const rowsTop = rowTop(rows, row)
    const height = rowHeight(rows, row)
    const viewFrom = top - rowsTop
    const slots = stillSlots(height, stillHeight, viewFrom, viewFrom + viewHeight + SCROLL_STEP)
    const edges = sceneEdges(rows, row)
    return (
      <LedgerRow
        key={cue.id}
        cue={cue}
        previous={rows.cues[place - 1]}
        place={place}
        row={row}
        top={rowsTop}
        height={height}
        end={rowEnd(rows, place)}
        reel={reel}
        slots={slots.count}
        slotFrom={slots.from}
        slotTo={slots.to}
        verdict={verdictOf(state, cue)}
        isFlashing={(flashesOf(state, cue)?.breaches.length ?? 0) > 0}
        live={liveVerdictOf(state, cue)}
        agreement={agreementOfBits(bits[place] ?? 0)}
        isLooked={looked.has(cue.id)}
        isCurrent={cue === current}
        isSelected={selected.has(cue.id)}
        isFirstOfScene={edges.isFirst}
        isLastOfScene={edges.isLast}
      />
    )
  })
}
