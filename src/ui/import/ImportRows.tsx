import { memo, useMemo, useRef } from 'react'
import type { ImportOptions, ImportPlan, ImportRow } from '../../core/conform/importPlan.ts'
import type { DecisionList } from '../../core/formats/decisionList.ts'
import { cueNumber } from '../../core/job/cueList.ts'
import type { Cue, Reel } from '../../core/job/job.ts'
import { listedRows, type RowFilter } from '../../store/importing.ts'
import { cuesOf, reelOf } from '../../store/queries.ts'
import { useAppState } from '../appContext.ts'
import { MiddleCut } from '../parts/MiddleCut.tsx'
import { Scroller } from '../parts/Scroller.tsx'
import { useWindow } from '../parts/useWindow.ts'
import { changesText, OUTCOME_WORDS, rowPlaceText, spanText } from './importWords.ts'
import { Room } from './Room.tsx'
import { rowHeight } from './rowHeight.ts'

const heightOf = (row: ImportRow): number => rowHeight(changesText(row) === '' ? 1 : 2, row.says)

export type ImportRowsProps = {
  readonly list: DecisionList
  readonly plan: ImportPlan
  readonly filter: RowFilter
}

/** Every decision of a list and what becomes of it; drawn only where it is looked at. */
export const ImportRows = ({ list, plan, filter }: ImportRowsProps) => {
  const scroller = useRef<HTMLElement>(null)
  const reel = useAppState(reelOf)
  const cues = useAppState(cuesOf)
  const rows = useMemo(() => listedRows(plan, filter), [plan, filter])
  const { options } = plan
  const view = useWindow(scroller, rows, heightOf)
  if (!reel) return null
  return (
    <Scroller label="Decisions" place={scroller} onScroll={view.onScroll}>
      <table className="import-table" aria-rowcount={rows.length + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">no.</th>
            <th scope="col">outcome</th>
            <th scope="col">cue</th>
            <th scope="col">decision</th>
            <th scope="col">{options.times} in, out</th>
            <th scope="col">on the reel</th>
          </tr>
        </thead>
        <tbody>
          {view.before > 0 && <Room height={view.before} />}
          {rows.slice(view.from, view.to).map((row, i) => (
            <Row
              key={row.number}
              row={row}
              index={view.from + i + 2}
              list={list}
              reel={reel}
              cues={cues}
              options={options}
            />
          ))}
          {view.after > 0 && <Room height={view.after} />}
        </tbody>
      </table>
    </Scroller>
  )
}

type RowProps = {
  readonly row: ImportRow
  readonly index: number
  readonly list: DecisionList
  readonly reel: Reel
  readonly cues: readonly Cue[]
  readonly options: ImportOptions
}

const Row = memo(({ row, index, list, reel, cues, options }: RowProps) => {
  const { decision, outcome, cue, says } = row
  const words = OUTCOME_WORDS[outcome]
  const span = spanText(
    options.times === 'record' ? decision.recordSpan : decision.sourceSpan,
    list,
    reel,
  )
  return (
    <tr className={`is-${outcome}`} aria-rowindex={index} style={{ height: heightOf(row) }}>
      <th scope="row">
        {row.number}
        {decision.line !== undefined && <span className="dim">line {decision.line}</span>}
      </th>
      <td className="outcome">
        <span aria-hidden="true" className="sign">
          {words.sign}
        </span>
        {words.word}
      </td>
      <td>{cue ? cueNumber(cues, cue) : outcome === 'begins' ? 'new' : ''}</td>
      <td title={decision.name}>
        <MiddleCut text={decision.name || (decision.source ? '' : '–')} />
        <span className="one-line dim">{decision.source}</span>
      </td>
      <td>
        {span ? (
          <>
            {span.from}
            <span className="dim">{span.to}</span>
          </>
        ) : (
          <span className="dim">no times</span>
        )}
      </td>
      <td title={says}>
        <span className="one-line">{rowPlaceText(row, reel) || '–'}</span>
        <span className="one-line dim">{changesText(row)}</span>
        {says !== '' && <span className="says">{says}</span>}
      </td>
    </tr>
  )
})
